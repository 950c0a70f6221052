import { expect, test } from 'vitest';
import { exportedNames, findDoubledNames } from './find-doubled-names.js';

const doubledOf = (...texts: readonly string[]) =>
  findDoubledNames(new Map(texts.map((text, at) => [`src/io/${'abc'[at]}.ts`, text])));
const BOTH = 'sizeOf is exported by src/io/a.ts and src/io/b.ts; give each its own name';

test.each([
  ['two functions', 'export function sizeOf() {}', 'export async function sizeOf() {}'],
  ['two classes', 'export class sizeOf {}', 'export abstract class sizeOf {}'],
  ['two interfaces', 'export interface sizeOf { a: 1 }', 'export interface sizeOf { b: 1 }'],
  ['two types', 'export type sizeOf = 1;', 'export declare type sizeOf = 2;'],
  ['a function and a type', 'export function sizeOf() {}', 'export type sizeOf = 1;'],
  ['a constant that holds a function', 'export const sizeOf = () => 1;', 'export function sizeOf() {}'],
  ['one of an export list', 'function sizeOf() {}\nexport { sizeOf };', 'export function sizeOf() {}'],
  ['one renamed in an export list', 'type A = 1;\nexport { type A as sizeOf };', 'export type sizeOf = 1;'],
  ['a default export with a name', 'export default function sizeOf() {}', 'export function sizeOf() {}'],
])('%s of one name are one sentence', (_, first, second) => {
  expect(doubledOf(first, second)).toEqual([BOTH]);
});

test('three files of one name are named together', () => {
  const text = 'export type Name = string;';
  expect(doubledOf(text, text, text)).toEqual([
    'Name is exported by src/io/a.ts, src/io/b.ts and src/io/c.ts; give each its own name',
  ]);
});

test.each([
  ['a re-export', 'export function sizeOf() {}', "export { sizeOf } from './a.js';"],
  ['a re-export of all', 'export function sizeOf() {}', "export * from './a.js';"],
  [
    'an import that is exported',
    'export type A = 1;',
    "import type { A } from './a.js';\nexport type { A };",
  ],
  ['a name of its own file', 'export function sizeOf() {}', 'function sizeOf() {}'],
  ['a name within a function', 'export function sizeOf() {}', 'export function b() { function sizeOf() {} }'],
  ['a method', 'export function sizeOf() {}', 'export class B { sizeOf() {} }'],
  ['a plain constant', 'export const LIMIT = 1;', 'export const LIMIT = 2;'],
  ['overloads', 'export function f(a: 1): 1;\nexport function f(a: unknown) { return a; }', ''],
  ['a type and a constant of one file', 'export type A = 1;\nexport const A = () => 1;', ''],
])('%s is no second export', (_, first, second) => {
  expect(doubledOf(first, second)).toEqual([]);
});

test('the names of a file are those that it declares and exports', () => {
  const text = `
    export function a() {}
    export const b = () => 1, c = 1;
    class D {}
    export { D, e } from './d.js';
    export { D as F };
  `;
  expect([...exportedNames('src/io/a.ts', text)]).toEqual(['a', 'b', 'F']);
});
