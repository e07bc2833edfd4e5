import { dashes, heading, type PaperContext, say } from '../context.ts';
import type { Block, Content } from '../paper.ts';

/** A text somebody wrote at the survey, or the line that says nobody looked. */
const seen = (code: string, text: string | undefined): Content =>
  text ? say(code, { seen: text }) : say(`${code}-not-known`);

const answer = (code: string, value: 'yes' | 'no' | 'not known' | undefined): Content =>
  say(`${code}-${(value ?? 'not known').replaceAll(' ', '-')}`);

/** Flames and sparks in and beside the room, and where its air goes. */
export function roomBlocks(ctx: PaperContext): readonly Block[] {
  const building = ctx.job.survey.building ?? {};
  return [
    heading('safety-ignition'),
    ...dashes([
      seen('safety-ignition-seen', building.ignitionSources),
      seen('safety-adjoining', building.adjoiningRooms),
      answer('safety-air-returns', building.airReturns),
      answer('safety-occupied', building.occupiedBeside),
      say('safety-ignition-out'),
      say('safety-ignition-back'),
      say('safety-static'),
    ]),
  ];
}

/** What lies on or in the slab that may not be ground, drilled or cut into unasked. */
export function slabBlocks(ctx: PaperContext): readonly Block[] {
  const reasons = ctx.survey?.verdict.reasons ?? [];
  const found = reasons.filter(({ code }) =>
    /^survey-(hazard-|service-|cover-not-known|floor-not-described|drains-)/.test(code),
  );
  return [
    heading('safety-slab'),
    ...dashes([
      ...found.flatMap((reason) => [{ say: reason }, ...(reason.lift ? [{ say: reason.lift }] : [])]),
      ...(found.length === 0 ? [say('safety-slab-nothing')] : []),
      say('safety-slab-unexpected'),
    ]),
  ];
}
