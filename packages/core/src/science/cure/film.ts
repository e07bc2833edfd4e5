import { formula } from '../../kernel/formula.ts';

export const solventDiffusionTime = formula({
  id: 'cure/solvent-diffusion-time',
  says: 'Time a solvent needs to find its way out of a film by diffusion',
  equation: 'film² / diffusivity',
  takes: { film: 'm', diffusivity: 'm²/s' },
  gives: 's',
  holds: { film: [0, 0.005], diffusivity: [1e-16, 1e-9] },
  refuses: { film: [0, 1], diffusivity: [1e-20, 1] },
  source: 'diffusion-scaling',
  notes:
    'An order of magnitude: the diffusivity falls by decades as the film sets. It says that twice the film holds its solvent four times as long, which is why the sheet’s most film and least recoat time govern.',
  shows: 'duration',
  inputShows: { film: 'film' },
  compute: ({ film, diffusivity }) => (film * film) / diffusivity,
});
