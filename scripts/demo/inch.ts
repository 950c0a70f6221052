/** Big ends of one engine in inches and °F, partly typed with their units. */
import { type DemoBook, type DemoRow, notes, setup, sheet } from './demo-book.js';
import { type Random, seeded } from './random.js';

const TYPE = 'Type N4';
/** Readings are typed in steps of 0.00005 in. */
const STEPS_PER_INCH = 20000;
const inches = (steps: number) => Number((steps / STEPS_PER_INCH).toFixed(5));

interface Place {
  readonly journal: number;
  readonly journalMark: string;
  readonly bore: number;
  readonly boreMark: string;
  readonly wall: number;
  readonly shellMark: string;
  readonly strip: number;
}

/** Sizes in steps: 37790 is 1.8895 in, 40160 is 2.0080 in, 1169 is 0.05845 in. */
const PLACES: readonly Place[] = [
  {
    journal: 37792,
    journalMark: '1',
    bore: 40160,
    boreMark: 'A',
    wall: 1169,
    shellMark: 'L',
    strip: 0.0015,
  },
  {
    journal: 37791,
    journalMark: '1',
    bore: 40168,
    boreMark: 'B',
    wall: 1173,
    shellMark: 'M',
    strip: 0.0016,
  },
  {
    journal: 37784,
    journalMark: '2',
    bore: 40161,
    boreMark: 'A',
    wall: 1173,
    shellMark: 'M',
    strip: 0.0015,
  },
  {
    journal: 37785,
    journalMark: '2',
    bore: 40168,
    boreMark: 'B',
    wall: 1177,
    shellMark: 'N',
    strip: 0.0015,
  },
];

export function inch(): DemoBook {
  const random = seeded(1890);
  return {
    name: 'inch.xlsx',
    sheets: [
      notes(
        'Four big ends of one engine, in inches and °F. Some readings are typed with their unit, one in mm.',
        'Fits is the workshop’s own, with the readings of a gauge strip.',
      ),
      setup({ 'Length unit': 'in', 'Temperature unit': 'F', Confidence: '95 %', 'Half difference': 0.0002 }),
      limits(),
      classes(),
      selection(),
      gauges(),
      journals(random),
      rods(random),
      shells(random),
      fits(),
    ],
  };
}

const KIND = { 'Engine type': TYPE, Fit: 'big end' };

function limits() {
  const row: DemoRow = {
    ...KIND,
    'Clearance min': 0.0008,
    'Clearance max': 0.0022,
    'Service limit': 0.003,
    'Journal min': 1.889,
    'Journal max': 1.8898,
    'Bore min': 2.0078,
    'Bore max': 2.0086,
    'Out-of-round limit': 0.0003,
    'Taper limit': 0.0003,
    'Journal material': 'cast iron',
    Source: 'invented',
  };
  return sheet('Limits', Object.keys(row), [row]);
}

function classes() {
  const rows: DemoRow[] = [
    { Of: 'journal', Mark: 1, From: 1.8894, To: 1.8898 },
    { Of: 'journal', Mark: 2, From: 1.889, To: 1.8894 },
    { Of: 'bore', Mark: 'A', From: 2.0078, To: 2.0082 },
    { Of: 'bore', Mark: 'B', From: 2.0082, To: 2.0086 },
    { Of: 'shell', Mark: 'L', From: 0.05835, To: 0.05855 },
    { Of: 'shell', Mark: 'M', From: 0.05855, To: 0.05875 },
    { Of: 'shell', Mark: 'N', From: 0.05875, To: 0.05895 },
  ].map((row) => ({ ...KIND, ...row }));
  return sheet('Classes', ['Engine type', 'Fit', 'Of', 'Mark', 'From', 'To'], rows);
}

function selection() {
  const rows = [
    { 'Journal mark': 1, 'Bore mark': 'A', 'Shell mark': 'L' },
    { 'Journal mark': 1, 'Bore mark': 'B', 'Shell mark': 'M' },
    { 'Journal mark': 2, 'Bore mark': 'A', 'Shell mark': 'M' },
    { 'Journal mark': 2, 'Bore mark': 'B', 'Shell mark': 'N' },
  ].map((row) => ({ ...KIND, ...row }));
  return sheet('Selection', ['Engine type', 'Fit', 'Journal mark', 'Bore mark', 'Shell mark'], rows);
}

function gauges() {
  const rows: DemoRow[] = [
    { Gauge: 'Micrometer', 'Max error': 0.0001, Resolution: 0.00005, Repeatability: 0.00002 },
    {
      Gauge: 'Bore gauge',
      'Max error': '1.3 µm',
      Resolution: 0.00005,
      Repeatability: 0.00003,
      'Set from': 'Micrometer',
    },
    { Gauge: 'Ball micrometer', 'Max error': 0.00005, Resolution: 0.00005, Repeatability: 0.00002 },
  ];
  return sheet('Gauges', ['Gauge', 'Max error', 'Resolution', 'Repeatability', 'Set from'], rows);
}

function reading(size: number, random: Random): number {
  return inches(size + random.between(-1, 1));
}

function journals(random: Random) {
  const rows = PLACES.map(({ journal, journalMark }, at): DemoRow => {
    const first = reading(journal, random);
    return {
      Part: `P${at + 1}`,
      Engine: 'E1',
      Fit: 'big end',
      Position: at + 1,
      Mark: journalMark,
      Temperature: 73.4,
      Gauge: 'Micrometer',
      'A 0': at % 2 === 0 ? `${first}"` : first,
      'A 90': reading(journal, random),
      // Read on a metric micrometer.
      'B 0': at === 1 ? '47.994 mm' : reading(journal, random),
      'B 90': reading(journal, random),
    };
  });
  const headers = [
    'Part',
    'Engine',
    'Fit',
    'Position',
    'Mark',
    'Temperature',
    'Gauge',
    'A 0',
    'A 90',
    'B 0',
    'B 90',
  ];
  return sheet('Journals', headers, rows);
}

function rods(random: Random) {
  const rows = PLACES.map(({ bore, boreMark }, at): DemoRow => {
    const first = reading(bore, random);
    return {
      Part: `R${at + 1}`,
      Engine: 'E1',
      Position: at + 1,
      Mark: boreMark,
      Temperature: at === 3 ? '23 °C' : 73.4,
      Gauge: 'Bore gauge',
      'A 0': at === 2 ? `${first} in` : first,
      'A 60': reading(bore, random),
      'A 120': reading(bore, random),
      'B 0': reading(bore, random),
      'B 60': reading(bore, random),
      'B 120': reading(bore, random),
    };
  });
  const headers = [
    'Part',
    'Engine',
    'Position',
    'Mark',
    'Temperature',
    'Gauge',
    'A 0',
    'A 60',
    'A 120',
    'B 0',
    'B 60',
    'B 120',
  ];
  return sheet('Rods', headers, rows);
}

function shells(random: Random) {
  const rows = PLACES.flatMap(({ wall, shellMark }, at) =>
    ['upper', 'lower'].map((half): DemoRow => {
      const first = reading(wall, random);
      return {
        Part: `S${at + 1} ${half}`,
        Engine: 'E1',
        Position: at + 1,
        Half: half,
        Mark: shellMark,
        Temperature: 73.4,
        Gauge: 'Ball micrometer',
        'Wall 1 (in)': half === 'upper' ? `${first}"` : first,
        'Wall 2 (in)': reading(wall, random),
        'Wall 3 (in)': reading(wall, random),
      };
    }),
  );
  const readings = ['Wall 1 (in)', 'Wall 2 (in)', 'Wall 3 (in)'];
  const headers = ['Part', 'Engine', 'Position', 'Half', 'Mark', 'Temperature', 'Gauge', ...readings];
  return sheet('Shells', headers, rows);
}

function fits() {
  const rows = PLACES.map(({ strip }, at) => ({
    Engine: 'E1',
    Fit: 'big end',
    Position: at + 1,
    'Strip reading': strip,
  }));
  const parts = ['Journal', 'Bore', 'Upper shell', 'Lower shell'];
  return sheet('Fits', ['Engine', 'Fit', 'Position', ...parts, 'Strip reading'], rows);
}
