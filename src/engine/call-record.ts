/** Where the row functions of the columns look for a call of a function. */
export { callRecord, givenOf, scalarOf } from './functions/call-record.js';
