/** Where the row functions of the columns look for the arguments of a function. */
export type { Given, Scalar } from './functions/given.js';
export { ArgumentReader } from './functions/read-arguments.js';
