export { exemptionOf, vocLimitOf, workDay } from './place.ts';
export { thinner } from './thinner.ts';
