/** Following the sheet Re-measure decides more fits a reading than measuring at random; `npm run plan` takes more books. */
import { expect, test } from 'vitest';
import { planCounts } from '../../scripts/simulate/plan.js';
import { PLAN_SET_UPS } from '../../scripts/simulate/set-ups.js';

test('a bore gauge of poor repeatability', () => {
  const setUp = PLAN_SET_UPS.find(({ name }) => name.startsWith('a bore gauge'))!;
  const [sheet, random] = planCounts(setUp, 40, 3, ['by the sheet Re-measure', 'a spot at random']);
  expect(sheet!.decided).toBeGreaterThan(0);
  expect(random!.fits).toBe(sheet!.fits);
  expect(sheet!.decided / sheet!.readings).toBeGreaterThan((1.5 * random!.decided) / random!.readings);
});
