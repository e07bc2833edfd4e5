export type { Ask } from './ask.ts';
export { type Claim, claimOf, claimsOf, sameCondition } from './claim.ts';
export { doubtsOf } from './doubts.ts';
export { COMPARABLE, type Comparable, type Judged, judge } from './judge.ts';
export { type Better, FAMILIES, type Family, familyOf, type Method, methodOf } from './methods.ts';
export type { Outcome } from './outcome.ts';
export { compareProducts, type EvidencePair, type EvidenceRow, type EvidenceTable, pairOf } from './table.ts';
export { type ClaimValue, readValue } from './value.ts';
