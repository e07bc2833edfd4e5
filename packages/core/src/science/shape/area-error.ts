import { formula } from '../../kernel/formula.ts';

/**
 * Standard deviation of the area of a taped rectangle, m².
 *
 * The reading errors of length and width are independent, so they add in quadrature. An error of the tape itself
 * (a stretched or worn tape) lengthens both sides together: it gives 2 x scaleError x area, does not average out and
 * is added straight on top. Some courses add the reading errors straight too; that overstates independent errors.
 */
export const areaError = formula({
  id: 'shape/area-error',
  says: 'Standard deviation of the area of a taped rectangle',
  equation: 'error = sqrt((width lengthError)² + (length widthError)²) + 2 scaleError length width',
  takes: { length: 'm', width: 'm', lengthError: 'm', widthError: 'm', scaleError: '1' },
  gives: 'm²',
  holds: {
    length: [0.1, 1000],
    width: [0.1, 1000],
    lengthError: [0, 0.5],
    widthError: [0, 0.5],
    scaleError: [0, 0.02],
  },
  refuses: {
    length: [0, 1e6],
    width: [0, 1e6],
    lengthError: [0, 1e4],
    widthError: [0, 1e4],
    scaleError: [0, 1],
  },
  defaults: { scaleError: 0 },
  source: 'error-propagation',
  shows: 'area',
  inputShows: {
    length: 'length',
    width: 'length',
    lengthError: 'small-length',
    widthError: 'small-length',
    scaleError: 'share',
  },
  compute: ({ length, width, lengthError, widthError, scaleError }) =>
    Math.hypot(width * lengthError, length * widthError) + 2 * scaleError * length * width,
});
