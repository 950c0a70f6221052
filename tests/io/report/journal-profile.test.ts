/** A drawn journal: every spot where its diameter puts it. */
import type { Element } from 'hast';
import { expect, test } from 'vitest';
import type { PartResult } from '../../../src/engine/assess/part-result.js';
import { anglesOf, journalProfile, reachOf, shapeKey } from '../../../src/io/report/journal-profile.js';
import { ProfileFrames } from '../../../src/io/report/profile-frame.js';
import { assess, table } from '../../engine/book-of.js';

function journals(...rows: Record<string, number>[]) {
  return assess({
    Journals: table(
      ...rows.map((readings, row) => ({
        Part: `J${row}`,
        Engine: 'E',
        Fit: 'main',
        Position: row,
        ...readings,
      })),
    ),
  }).parts.of('Journals');
}

const framesOf = (parts: readonly PartResult[]) => new ProfileFrames('e', reachOf(parts), 'mm');

/** The middles of the spots of one angle: x and y as drawn. */
function spotsOf(svg: Element, order: number): [number, number][] {
  const drawn = svg.children.filter(
    (child): child is Element =>
      child.type === 'element' && /\b(spot|dot)\b/.test(String(child.properties.className)),
  );
  return [...String(drawn[order]?.properties.d).matchAll(/M([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [
    Number(x),
    Number(y),
  ]);
}

test('higher is larger, stations run from left to right, and alike spots stand alike', () => {
  const parts = journals({
    'A 0': 50.01,
    'B 0': 50,
    'C 0': 49.99,
    'A 90': 50.01,
    'B 90': 49.98,
    'C 90': 49.99,
  });
  const angles = anglesOf(parts);
  expect(angles).toEqual([0, 90]);
  const svg = journalProfile(parts[0]!, angles, framesOf(parts));
  const [at0, at90] = [spotsOf(svg, 0), spotsOf(svg, 1)];
  expect(at0.map(([x]) => x)).toEqual([...at0.map(([x]) => x)].sort((a, b) => a - b));
  expect(at0[0]![1]).toBeLessThan(at0[1]![1]);
  expect(at0[1]![1]).toBeLessThan(at0[2]![1]);
  expect(at90[0]).toEqual(at0[0]);
  expect(at90[1]![1]).toBeGreaterThan(at0[2]![1]);
});

test('journals on one scale: twice the taper is twice as steep', () => {
  const parts = journals({ 'A 0': 50.004, 'B 0': 50 }, { 'A 0': 50.008, 'B 0': 50 });
  const frames = framesOf(parts);
  const rise = parts.map((part) => {
    const [a, b] = spotsOf(journalProfile(part, [0], frames), 0);
    return b![1] - a![1];
  });
  expect(rise[1]! / rise[0]!).toBeCloseTo(2, 1);
});

test('the key names each angle by its own shape', () => {
  expect(shapeKey([0, 45, 90, 135])).toBe('● 0°, □ 45°, ▲ 90°, ◇ 135°');
});
