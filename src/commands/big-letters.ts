/** Words in letters five lines high, to be read from a step away. Plain signs only: they work in any terminal. */

/** Rows of five signs, from above; what is not here is shown as a gap. */
const LETTERS: Readonly<Record<string, string>> = {
  A: ' ### #   #######   ##   #',
  B: '#### #   ##### #   ##### ',
  C: ' #####    #    #     ####',
  D: '#### #   ##   ##   ##### ',
  E: '######    ###  #    #####',
  F: '######    ###  #    #    ',
  G: ' #####    #  ###   # ####',
  H: '#   ##   #######   ##   #',
  I: ' ###   #    #    #   ### ',
  J: '  ###   #    # #  #  ##  ',
  K: '#   ##  # ###  #  # #   #',
  L: '#    #    #    #    #####',
  M: '#   ### ### # ##   ##   #',
  N: '#   ###  ## # ##  ###   #',
  O: ' ### #   ##   ##   # ### ',
  P: '#### #   ##### #    #    ',
  Q: ' ### #   ## # ##  #  ## #',
  R: '#### #   ##### #  # #   #',
  S: ' #####     ###     ##### ',
  T: '#####  #    #    #    #  ',
  U: '#   ##   ##   ##   # ### ',
  V: '#   ##   ##   # # #   #  ',
  W: '#   ##   ## # ### ###   #',
  X: '#   # # #   #   # # #   #',
  Y: '#   # # #   #    #    #  ',
  Z: '#####   #   #   #   #####',
  0: ' ### #  ### # ###  # ### ',
  1: '  #   ##    #    #   ### ',
  2: ' ### #   #  ##  #   #####',
  3: '####     # ###     ##### ',
  4: '#  # #  # #####   #    # ',
  5: '######    ####     ##### ',
  6: ' ### #    #### #   # ### ',
  7: '#####   #   #   #    #   ',
  8: ' ### #   # ### #   # ### ',
  9: ' ### #   # ####    # ### ',
  '#': ' # # ##### # # ##### # # ',
  '-': '           ###           ',
  '.': '                      #  ',
};

const HEIGHT = 5;
const WIDTH = 5;
const GAP = '  ';

/** The lines, or none where they would not fit. */
export function bigLetters(text: string, columns: number): string[] {
  const letters = [...text.toUpperCase()];
  if (letters.length * (WIDTH + GAP.length) > columns) return [];
  const blank = ' '.repeat(WIDTH * HEIGHT);
  return Array.from({ length: HEIGHT }, (_, row) =>
    letters
      .map((letter) => (LETTERS[letter] ?? blank).slice(row * WIDTH, (row + 1) * WIDTH))
      .join(GAP)
      .trimEnd(),
  );
}
