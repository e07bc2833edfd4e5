import type { ViewVoice } from '../../job/voice.ts';
import { words } from '../../words.ts';

/** A pack as it stands on the shelf: `2 gal kit`, or a bag by its weight. */
export const packName = (voice: ViewVoice, item: string, pack: string): string => {
  const name = voice.name(`${item}/${pack}`);
  return pack === 'bag' ? words.quantities.bag(name) : name;
};
