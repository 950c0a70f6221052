/**
 * What a validator of the open package and spreadsheet schemas finds in a package. The package `@ooxml-tools/validate`
 * is the Open XML SDK compiled for Node; it needs neither .NET nor a network.
 */
import validate, { type ValidationResult } from '@ooxml-tools/validate';

/**
 * The errors of a package, as `PART: description`; a place within a part is left out, since writing moves it. A package
 * that the validator does not open, because a part's name is no address, has one error that says so.
 */
export async function schemaErrors(bytes: Uint8Array): Promise<string[]> {
  const found = await validate(new Uint8Array(bytes), 'xlsx', 'Microsoft365').catch(
    (error: unknown) => error,
  );
  if (!Array.isArray(found)) return [`not opened: ${String(found).slice(0, 200)}`];
  return (found as ValidationResult[])
    .map(({ path, description }) => `${path?.partUri ?? ''}: ${description}`)
    .sort();
}

/** The errors of `after` that `before` does not have, or has fewer times. */
export function newErrors(before: readonly string[], after: readonly string[]): string[] {
  const left = new Map<string, number>();
  for (const error of before) left.set(error, (left.get(error) ?? 0) + 1);
  return after.filter((error) => {
    const count = left.get(error) ?? 0;
    left.set(error, count - 1);
    return count <= 0;
  });
}
