/** The figures of a gauge study as they are told. */
import { expect, test } from 'vitest';
import { studyFigures } from '../../../src/engine/assess/study-figures.js';

const FOUND = {
  ...{ repeatability: 80.4, reproducibility: 12.5, gauge: 81.4, parts: 300.2 },
  ...{ total: 325.6, categories: 5.99 },
};

test('lengths are rounded to the grain, categories are cut to whole ones', () => {
  expect(studyFigures(FOUND)).toEqual({
    ...{ repeatability: 80, reproducibility: 13, gauge: 81, parts: 300 },
    ...{ gaugeShare: 0.25, categories: 5 },
  });
});

test.each([
  ['one person', { reproducibility: undefined }, { reproducibility: undefined }],
  ['one part', { parts: undefined, categories: undefined }, { parts: undefined, categories: undefined }],
  ['a gauge that never varies', { categories: Number.POSITIVE_INFINITY }, { categories: undefined }],
  ['nothing that varies', { gauge: 0, total: 0 }, { gauge: 0, gaugeShare: undefined }],
])('of %s what is not seen stays unknown', (_, found, told) => {
  expect(studyFigures({ ...FOUND, ...found })).toMatchObject(told);
});
