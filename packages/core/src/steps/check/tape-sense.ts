import type { Area } from '../../drawing.ts';
import type { Issue } from '../../kernel/issue.ts';
import { type Path, unknownId } from './ids.ts';

/** A taped room: corners named once, measures between two known corners. */
export function tapeIssues(area: Area, path: Path): readonly Issue[] {
  const tape = area.tape;
  if (!tape) return [];
  const at = [...path, 'tape'];
  const twice = tape.corners.flatMap((corner, i): readonly Issue[] =>
    tape.corners.indexOf(corner) === i
      ? []
      : [
          {
            code: 'check-id-twice',
            path: [...at, 'corners', i],
            value: corner,
            names: { first: `${tape.corners.indexOf(corner)}` },
          },
        ],
  );
  const measures = tape.measures.flatMap(({ from, to, length }, i): readonly Issue[] => [
    ...unknownId('check-corner-unknown', from, tape.corners, [...at, 'measures', i, 'from']),
    ...unknownId('check-corner-unknown', to, tape.corners, [...at, 'measures', i, 'to']),
    ...(from === to
      ? [
          {
            code: 'check-measure-to-itself',
            path: [...at, 'measures', i],
            value: length.typed,
            names: { corner: from },
          },
        ]
      : []),
  ]);
  const square = (tape.rightAngles ?? []).flatMap((corner, i) =>
    unknownId('check-corner-unknown', corner, tape.corners, [...at, 'rightAngles', i]),
  );
  return [...twice, ...measures, ...square];
}
