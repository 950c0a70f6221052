/** `npm run dependencies`: makes docs/dependencies.md, all that is installed with the program, from package-lock.json. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly dependencies?: Readonly<Record<string, string>>;
}

const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
  packages: Readonly<Record<string, Locked>>;
};
const FOLDER = 'node_modules/';
const nameOf = (place: string) => place.slice(place.lastIndexOf(FOLDER) + FOLDER.length);

/** Where a package finds another: in its own folder, else in one above. */
function placeOf(name: string, from: string): string | undefined {
  for (let at = from; ; at = at.slice(0, Math.max(0, at.lastIndexOf(`/${FOLDER}`)))) {
    const place = `${at === '' ? '' : `${at}/`}${FOLDER}${name}`;
    if (packages[place]) return place;
    if (at === '') return undefined;
  }
}

/** All that one of our own dependencies brings, itself first. */
function broughtBy(name: string): string[] {
  const found = new Set<string>();
  const pending = [placeOf(name, '')];
  for (let place = pending.shift(); place !== undefined; place = pending.shift()) {
    if (found.has(place)) continue;
    found.add(place);
    for (const each of Object.keys(packages[place]?.dependencies ?? {})) pending.push(placeOf(each, place));
  }
  return [...found];
}

/** First words of licence texts, for a package whose manifest names its licence in another way than the lock file takes. */
const LICENCE_TEXTS: readonly (readonly [string, string])[] = [
  ['Permission is hereby granted, free of charge, to any person obtaining a copy', 'MIT'],
  ['Redistribution and use in source and binary forms', 'BSD'],
];

/** As the lock file says it, else as the package's own file LICENSE reads. */
function licenceOf(place: string): string {
  const named = packages[place]?.license;
  if (named) return named;
  const file = readdirSync(place).find((name) => /^licen[cs]e(?:\.\w+)?$/i.test(name));
  const text = file === undefined ? '' : readFileSync(`${place}/${file}`, 'utf8').replaceAll(/\s+/g, ' ');
  const found = LICENCE_TEXTS.find(([words]) => text.includes(words));
  if (!found) throw new Error(`${place}: found no licence that is known; read its files, and add it here`);
  return `${found[1]} (its file ${file})`;
}

const own = Object.keys(packages['']?.dependencies ?? {});
const all = new Set(own.flatMap(broughtBy));
const rows = own.map((name) => {
  const [first = '', ...others] = broughtBy(name);
  const brought = others.map((place) => `${nameOf(place)} ${packages[place]?.version}`).sort();
  return `| ${name} | ${packages[first]?.version} | ${licenceOf(first)} | ${brought.join(', ') || 'nothing'} |`;
});
writeFileSync(
  'docs/dependencies.md',
  `# What is installed with the program

Made by \`npm run dependencies\` from package-lock.json. ${own.length} packages of the program's own choice bring ${all.size - own.length} others. What is known against them: [SECURITY.md](../SECURITY.md).

| Package | Version | Licence | Brings |
| --- | --- | --- | --- |
${rows.join('\n')}
`,
);
