/** Which spots still need a reading, and which is next. */
import type { BenchSpot } from './bench-book.js';

const same = (a: BenchSpot, b: BenchSpot) =>
  a.sheet === b.sheet && a.row === b.row && a.column.column === b.column.column;

export class Agenda {
  private readonly open: Set<BenchSpot>;
  private readonly skipped = new Set<BenchSpot>();
  /** Spots that are asked for before the others. */
  private readonly first: BenchSpot[] = [];
  private at = 0;

  /**
   * @param spots in the order in which they are asked for
   * @param isMoot whether a reading elsewhere has made one of a spot needless
   */
  constructor(
    private readonly spots: readonly BenchSpot[],
    private readonly isMoot: (spot: BenchSpot) => boolean = () => false,
  ) {
    this.open = new Set(spots);
  }

  get total(): number {
    return this.spots.length;
  }

  /** The spot that is asked for now; undefined where nothing is left, or all that is left was skipped. */
  current(): BenchSpot | undefined {
    if (this.first[0]) return this.first[0];
    for (let step = 0; step < this.spots.length; step++) {
      const place = (this.at + step) % this.spots.length;
      const spot = this.spots[place]!;
      if (!this.open.has(spot) || this.skipped.has(spot) || this.isMoot(spot)) continue;
      this.at = place;
      return spot;
    }
    return undefined;
  }

  /** Every spot that still needs a reading, skipped ones included. */
  left(): BenchSpot[] {
    const isLeft = (spot: BenchSpot) => !this.first.includes(spot) && !this.isMoot(spot);
    return [...this.first, ...[...this.open].filter(isLeft)];
  }

  done(spot: BenchSpot): void {
    this.takeFromFirst(spot);
    this.open.delete(spot);
    this.skipped.delete(spot);
  }

  skip(spot: BenchSpot): void {
    this.takeFromFirst(spot);
    this.skipped.add(spot);
  }

  /** Asks for these now, and then goes on where it was. */
  ask(spots: readonly BenchSpot[]): void {
    const known = spots.map((spot) => this.known(spot));
    for (const spot of known) this.skipped.delete(spot);
    this.first.unshift(...known.filter((spot) => !this.first.includes(spot)));
  }

  /** Asks for these now, and then goes on behind the last of them. */
  goTo(spots: readonly BenchSpot[]): void {
    this.ask(spots);
    const place = this.spots.indexOf(this.known(spots.at(-1)!));
    if (place >= 0) this.at = place;
  }

  /** Asks for a spot anew whose reading was taken back. */
  reopen(spot: BenchSpot): void {
    const known = this.known(spot);
    if (this.spots.includes(known)) this.open.add(known);
    this.ask([known]);
  }

  private known(spot: BenchSpot): BenchSpot {
    return this.spots.find((other) => same(other, spot)) ?? spot;
  }

  private takeFromFirst(spot: BenchSpot): void {
    const place = this.first.indexOf(spot);
    if (place >= 0) this.first.splice(place, 1);
  }
}
