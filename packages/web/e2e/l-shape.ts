/** An L of 20 by 10 ft and 12 by 6 ft: 272 ft² (own arithmetic). */
export const WALLS = [
  ['right', '20 ft'],
  ['up', '10 ft'],
  ['left', '8 ft'],
  ['up', '6 ft'],
  ['left', '12 ft'],
] as const;
export const AREA = '272 ft²';
