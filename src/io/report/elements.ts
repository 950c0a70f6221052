/** Elements of the page. Text becomes text by the library that writes the tree out: nothing here is ever markup. */
import type { Element, ElementContent } from 'hast';
import { h, s } from 'hastscript';
import { visibleText } from './visible-text.js';

export type { Element, ElementContent };
/** Elements of HTML, and of SVG. */
export { h, s };

/** A user's own words in a sentence: kept apart from its writing direction. */
export function words(text: string): Element {
  return h('bdi', visibleText(text));
}
