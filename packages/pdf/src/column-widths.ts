/** What a column asks for, in points. */
export interface Wish {
  /** Longest piece that must not be broken. */
  readonly least: number;
  /** Longest word, where two amounts of one cell may stand on two lines rather than break the words of other columns. */
  readonly broken?: number;
  /** Everything on one line. */
  readonly most: number;
  /** Share of the whole, 0-1, when the paper says so. */
  readonly share?: number;
}

/**
 * Widths of columns that fill `room` between gaps. Columns with a share take it; the others get what their longest
 * word needs, then as much of their full line as there is; what is over goes to the longest texts.
 */
export function columnWidths(wishes: readonly Wish[], room: number, gap: number): readonly number[] {
  const free = room - gap * Math.max(0, wishes.length - 1);
  const shared = wishes.map(({ share }) => (share === undefined ? undefined : Math.max(0, share) * free));
  const taken = shared.reduce<number>((sum, width) => sum + (width ?? 0), 0);
  const open = wishes.filter(({ share }) => share === undefined);
  const least = open.reduce((sum, wish) => sum + wish.least, 0);
  // Shares that leave no room for the other columns' words are shrunk with them.
  if (taken + least > free && open.some(({ broken, least: own }) => broken !== undefined && broken < own)) {
    const tight = wishes.map(
      ({ broken, ...wish }): Wish => (broken === undefined ? wish : { ...wish, least: broken, most: wish.least }),
    );
    return columnWidths(tight, room, gap);
  }
  const squeeze = taken + least > free ? free / (taken + least) : 1;
  const left = free - taken * squeeze;
  const most = open.reduce((sum, wish) => sum + wish.most, 0);
  const stretch = most > least ? Math.min(1, Math.max(0, (left - least) / (most - least))) : 0;
  const spare = Math.max(0, left - (least + (most - least) * stretch));
  const widths = wishes.map((wish, index): number => {
    const share = shared[index];
    if (share !== undefined) return share * squeeze;
    if (least > left) return least > 0 ? (wish.least / least) * left : left / open.length;
    const basic = wish.least + (wish.most - wish.least) * stretch;
    return basic + (most > 0 ? (wish.most / most) * spare : spare / open.length);
  });
  // Only shares, and less than the whole: they are meant as proportions.
  const sum = widths.reduce((total, width) => total + width, 0);
  return open.length === 0 && sum > 0 ? widths.map((width) => (width / sum) * free) : widths;
}
