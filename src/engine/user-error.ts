/**
 * A refusal that the user can act on. Its message is one or more whole sentences: which file, what was
 * found, what was expected, what to do. Commands print it as it is; any other error is a fault of ours
 * and keeps its stack.
 */
export class UserError extends Error {
  override readonly name = 'UserError';
}
