/**
 * What a validator of the open package and spreadsheet schemas finds in a package. The package `@ooxml-tools/validate`
 * is the Open XML SDK compiled for Node; it needs neither .NET nor a network.
 */
import validate from '@ooxml-tools/validate';

/** The errors of a package, as `PART: description`; a place within a part is left out, since writing moves it. */
export async function schemaErrors(bytes: Uint8Array): Promise<string[]> {
  const found = await validate(new Uint8Array(bytes), 'xlsx', 'Microsoft365');
  return found.map(({ path, description }) => `${path?.partUri ?? ''}: ${description}`).sort();
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
