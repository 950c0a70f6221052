/**
 * How the page looks: black on white, a serifless face of even digits, 10 pt. Meaning is carried by words, places,
 * shapes and hatching, so that a copying machine loses none of it.
 */

/**
 * @param columns rules for the columns of tables where they stand as columns
 * @param cards rules that name the values of tables on a narrow screen
 * @param footer what stands at the foot of a printed page; plain characters
 */
export function pageStyle(columns: string, cards: string, footer: string): string {
  return `${BASE}${TABLES}${FIGURES}${DRAWINGS}
@media print,(min-width:721px){${columns}}
@media screen and (max-width:720px){${NARROW}${cards}}
@media print{${PRINT}}
@page{margin:14mm 15mm 16mm;@bottom-left{content:"${footer}";font:7pt ${FACES}}@bottom-right{content:counter(page) " / " counter(pages);font:7pt ${FACES}}}
`;
}

/** Narrow enough that a table of sizes goes on a page; the first that the machine has. */
const FACES = 'Arial,"Liberation Sans",Helvetica,"DejaVu Sans Condensed",sans-serif';
/** The height of the first face's small letters: a face with larger ones, which runs wider, is set smaller. */
const SMALL_LETTERS = 0.519;

const BASE = `
*{box-sizing:border-box}
html{color:#000;background:#fff;font:10pt/1.35 ${FACES};font-variant-numeric:tabular-nums;-webkit-text-size-adjust:100%;color-scheme:light}
body{margin:0 auto;padding:12px;max-width:190mm;overflow-wrap:anywhere}
h1{font-size:16pt;margin:0 0 4mm;line-height:1.2;border-bottom:2pt solid #000;padding-bottom:1mm}
h2{font-size:13pt;margin:9mm 0 2mm;border-bottom:1pt solid #000;padding-bottom:.5mm}
h3{font-size:11pt;margin:5mm 0 1.5mm}
h1,h2,h3,caption,figcaption,.lead{break-after:avoid}
p{margin:1.5mm 0}
a{color:inherit}
ul{margin:1mm 0;padding-left:5mm}
.caution{border:1.5pt solid #000;padding:2mm 3mm;margin:0 0 4mm}
.caution ul{margin-bottom:0}
.remarks{font-size:9pt}
.trace{font-size:9pt}
.contents{columns:10em;list-style:none;padding:0}
.contents a{display:block;padding:3px 0;min-height:24px}
.sign{display:flex;flex-wrap:wrap;gap:2mm;margin-top:7mm;break-inside:avoid}
.sign i{flex:1 1 25mm;border-bottom:.6pt solid #000}
.lent{position:absolute;width:0;height:0;overflow:hidden}
`;

const TABLES = `
table{border-collapse:collapse;width:100%;margin:3mm 0 1mm;font-size:9pt;font-size-adjust:${SMALL_LETTERS};line-height:1.25;border-bottom:1pt solid #000}
caption{text-align:left;font-weight:bold;font-size:10pt;padding:0 0 .8mm}
thead{border-top:1pt solid #000;border-bottom:.7pt solid #000}
th,td{padding:.5mm 1mm;text-align:left;vertical-align:top;font-weight:normal;overflow-wrap:break-word}
thead th{vertical-align:bottom;font-weight:bold;line-height:1.1}
th[scope=row]{font-weight:bold}
.w{overflow-wrap:anywhere}
tbody tr{break-inside:avoid}
tbody tr:nth-child(5n):not(:last-child){border-bottom:.3pt solid #000}
`;

const FIGURES = `
figure{margin:0;break-inside:avoid}
svg{display:block;width:100%;height:auto}
.charts{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(310px,100%),1fr));gap:4mm 6mm;align-items:start}
.charts figure{max-width:440px}
.charts figcaption,.key figcaption{font-weight:bold}
.journals{display:grid;grid-template-columns:repeat(auto-fill,minmax(148px,1fr));gap:3mm}
.journal figcaption{font-size:9pt;line-height:1.25;padding-left:21%}
.key{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(290px,100%),1fr));gap:0 6mm;margin:4mm 0;align-items:center}
.key figcaption{grid-column:1/-1}
`;

/** No rule by the picture around: what is lent to another picture stands in none. */
const DRAWINGS = `
text{font-size:12px;fill:#000}
text.tick{font-size:10.5px}
.mid{text-anchor:middle}
text.end{text-anchor:end}
.place{font-weight:bold}
.edge,.tick,.spread{stroke:#000;stroke-width:.6;fill:none}
text.tick,text.end{stroke:none;fill:#000}
.limit{stroke:#000;stroke-width:1.4}
.service{stroke:#000;stroke-width:1.4;stroke-dasharray:3 2}
.bar{stroke:#fff;stroke-width:1.6;paint-order:stroke}
.reach{stroke:#000;stroke-width:1;stroke-dasharray:2 2;fill:none}
.halo{stroke:#fff;stroke-width:4;fill:none}
.whisker{stroke:#000;stroke-width:1.2;fill:none}
.mean{stroke:#fff;stroke-width:4;stroke-linecap:round}
.outside{fill:url(#hatch-outside)}
.worn{fill:url(#hatch-service)}
.shaft{fill:url(#hatch-shaft)}
.dot{stroke:#000;stroke-width:6;stroke-linecap:round}
.strip{fill:#fff;stroke:#000;stroke-width:1.2}
.arrow{stroke:#fff;stroke-width:1}
.axis{stroke:#000;stroke-width:.8;stroke-dasharray:9 2 2 2}
.run{stroke:#000;stroke-width:1;fill:none}
.r1{stroke-dasharray:4 2}
.r2{stroke-dasharray:1.5 1.5}
.r3{stroke-dasharray:6 2 1.5 2}
.spot{stroke:#000;stroke-width:1}
.open{fill:#fff}
`;

const NARROW = `
table,tbody,tr,th[scope=row],td{display:block;width:auto}
thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
caption{display:block}
table{border-top:1pt solid #000}
tbody tr{border-bottom:.5pt solid #000;padding:1mm 0}
td:empty{display:none}
td{display:flex;gap:2mm}
td::before{flex:0 0 38%;font-size:9pt}
`;

const PRINT = `
body{padding:0;max-width:none}
.engine,.engine~section{break-before:page}
.charts{grid-template-columns:1fr 1fr}
.journals{grid-template-columns:repeat(4,1fr)}
.key{grid-template-columns:1fr 1fr}
nav{display:none}
h2{margin-top:0}
table:not(:has(tbody tr:nth-child(20))){break-inside:avoid}
`;
