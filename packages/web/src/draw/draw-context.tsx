import { createContext, type ReactNode, useCallback, useContext, useMemo, useState } from 'react';
import { insertAt, listAt, type Path, type Raw, removeAt, setAt, textAt, valueAt } from '../edit/path.ts';
import { useJob } from '../job/job-context.tsx';
import { usePreferences } from '../job/preferences.ts';
import type { AreaDrawing, Dot, Units } from '../worker/api.ts';
import { draftDrawing } from './draft.ts';
import { type DoorSide, joinRooms, sideIn, withDoors } from './joins.ts';
import { distance, dotsOf, FOOT, lengthText, metres, typedDot } from './lengths.ts';
import { atLength, helped, onWall } from './snap.ts';
import { type Solved, solveTape } from './tape.ts';
import { placesOf, putDown, type Tool } from './tools.ts';

/** What the drawing and the tables beside it share: the room looked at, the corner chosen, what a press puts down. */
export interface Draw {
  readonly units: Units;
  readonly room: number;
  readonly rooms: readonly Raw[];
  readonly area: Raw;
  readonly path: Path;
  readonly drawing: AreaDrawing;
  readonly outline: readonly Dot[];
  /** The room of sides and diagonals, where it is measured so. */
  readonly solved: Solved;
  /** Walls of any room as far as they can be read. */
  outlineOf(room: number): readonly Dot[];
  chooseRoom(index: number): void;
  addRoom(name: string): void;
  removeRoom(index: number): void;
  readonly tool: Tool;
  chooseTool(tool: Tool): void;
  readonly corner: number | null;
  chooseCorner(index: number | null): void;
  readonly step: string;
  setStep(text: string): void;
  /** The step in metres; a step that cannot be read counts as the usual one. */
  readonly stepSize: number;
  readonly rightAngles: boolean;
  setRightAngles(on: boolean): void;
  readonly nextLength: string;
  setNextLength(text: string): void;
  /** Places pressed for a thing that is not put down yet. */
  readonly pending: readonly Dot[];
  /** A press at a place, by hand or by keyboard. `near` is the reach of the help lines in metres. */
  press(dot: Dot, near: number): void;
  finish(): void;
  /** The half of a door that stands in the first of its rooms. */
  readonly doorHalf: DoorSide | null;
  forgetDoor(): void;
  letGo(): void;
  takeBack(): void;
  addCorner(after: number, dot?: Dot): void;
  moveCorner(index: number, dot: Dot, field: string): void;
  dropCorner(index: number, dot: Dot, near: number, field: string): void;
  removeCorner(index: number): void;
  setWall(index: number, text: string): void;
}

const Context = createContext<Draw | null>(null);

export function useDraw(): Draw {
  const draw = useContext(Context);
  if (!draw) throw new Error('useDraw stands outside a drawing');
  return draw;
}

export const USUAL_STEP = { imperial: '6 in', metric: '0.1 m' } as const;

export function DrawProvider({ children }: { readonly children: ReactNode }) {
  const { file, change } = useJob();
  const { units = file.reader.units } = usePreferences();
  const [room, setRoom] = useState(0);
  const [tool, setTool] = useState<Tool>('corner');
  const [corner, chooseCorner] = useState<number | null>(null);
  const [step, setStep] = useState<string>(USUAL_STEP[units]);
  const [rightAngles, setRightAngles] = useState(true);
  const [nextLength, setNextLength] = useState('');
  const [pending, setPending] = useState<readonly Dot[]>([]);
  const [doorHalf, setDoorHalf] = useState<DoorSide | null>(null);

  const rooms: readonly Raw[] = file.areas;
  const index = Math.min(room, rooms.length - 1);
  const path = useMemo<Path>(() => ['areas', index], [index]);
  const area = rooms[index];
  const solved = useMemo(() => solveTape(area), [area]);
  const doors = listAt(file, ['doors']);
  const drawing = useMemo(() => {
    const drawn = draftDrawing(area, units, solved.is === 'room' ? (solved.room.corners as readonly Dot[]) : []);
    const nameOf = (id: string): string =>
      textAt(
        rooms.find((one) => textAt(one, ['id']) === id),
        ['name'],
      ) || id;
    return withDoors(drawn, doors, nameOf);
  }, [area, units, solved, doors, rooms]);
  const outline = drawing.outline;
  const stepSize = metres(step) || (metres(USUAL_STEP[units]) as number);

  const edit = useCallback((by: (draft: Raw) => void, field?: string) => change((draft) => by(draft), field), [change]);
  const ringPath: Path = [...path, 'outline'];

  const addCorner = (after: number, dot?: Dot): void => {
    const ring = dotsOf(valueAt(area, ['outline']));
    const [a, b] = [ring[after], ring[(after + 1) % Math.max(ring.length, 1)]];
    const place =
      dot ??
      (a && b && ring.length > 1
        ? ([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const)
        : a
          ? atLength(a, [a[0] + 1, a[1]], 3 * FOOT)
          : ([0, 0] as const));
    edit((draft) => insertAt(draft, ringPath, typedDot(place, units), after + 1));
    chooseCorner(after + 1);
  };
  const moveCorner = (at: number, dot: Dot, field: string): void =>
    edit((draft) => setAt(draft, [...ringPath, at], typedDot(dot, units)), field);

  const neighbours = (at: number): readonly Dot[] =>
    [outline.at(at - 1), outline[(at + 1) % outline.length]].filter((dot): dot is Dot => dot !== undefined);

  const pressCorner = (dot: Dot, near: number): void => {
    const last = corner !== null && corner < outline.length ? corner : outline.length - 1;
    const from = outline[last];
    const help = { step: stepSize, rightAngles, near };
    let place = helped(dot, from ? [from] : [], outline, help);
    const length = metres(nextLength);
    if (from && length !== null && length > 0) {
      place = atLength(from, helped(dot, [from], [from], { ...help, step: 0 }), length);
      setNextLength('');
    }
    if (outline.some((other) => distance(other, place) < 1e-6)) return;
    addCorner(last, place);
  };

  const put = (places: readonly Dot[]): void => {
    if (tool === 'corner' || tool === 'door') return;
    edit((draft) => {
      putDown(draft, path, tool, places, units);
    });
    setPending([]);
  };

  /** The first room keeps its half until the other half is put down in another one. */
  const putDoor = (places: readonly Dot[]): void => {
    const [from, to] = places.map((place) => (outline.length > 2 ? onWall(place, outline) : place));
    setPending([]);
    if (!from || !to) return;
    const half: DoorSide = { area: textAt(area, ['id']), from, to };
    if (doorHalf && doorHalf.area !== half.area) {
      edit((draft) => joinRooms(draft, doorHalf, half, units, ''));
      setDoorHalf(null);
    } else setDoorHalf(half);
  };

  const press = (dot: Dot, near: number): void => {
    if (tool === 'corner') {
      // A room of sides and diagonals has no corners to put down: its measures place them.
      if (solved.is !== 'none') return;
      pressCorner(dot, near);
      return;
    }
    const { places, open } = placesOf(tool);
    const before = pending.at(-1);
    const square = rightAngles && (tool === 'hole' || tool === 'joint') && before ? [before] : [];
    const next = [...pending, helped(dot, square, pending, { step: stepSize, rightAngles: square.length > 0, near })];
    if (tool === 'door' && next.length >= places) putDoor(next);
    else if (!open && next.length >= places) put(next);
    else setPending(next);
  };

  const draw: Draw = {
    units,
    room: index,
    rooms,
    area,
    path,
    drawing,
    outline,
    solved,
    outlineOf(at) {
      const room = rooms[at];
      const found = solveTape(room);
      return draftDrawing(room, units, found.is === 'room' ? (found.room.corners as readonly Dot[]) : []).outline;
    },
    chooseRoom(at) {
      setRoom(at);
      chooseCorner(null);
      setPending([]);
    },
    addRoom(name) {
      const ids = new Set(rooms.map((one) => textAt(one, ['id'])));
      let n = rooms.length + 1;
      while (ids.has(`room-${n}`)) n += 1;
      edit((draft) => insertAt(draft, ['areas'], { id: `room-${n}`, name }));
      setRoom(rooms.length);
      chooseCorner(null);
    },
    removeRoom(at) {
      const gone = textAt(rooms[at], ['id']);
      edit((draft) => {
        removeAt(draft, ['areas', at]);
        // A door to a room that is gone leads nowhere.
        const doors = listAt(draft, ['doors']);
        for (let i = doors.length - 1; i >= 0; i--) if (sideIn(doors[i], gone)) removeAt(draft, ['doors', i]);
      });
      setRoom(0);
      chooseCorner(null);
    },
    tool,
    chooseTool(next) {
      setTool(next);
      setPending([]);
    },
    corner: corner !== null && corner < outline.length ? corner : null,
    chooseCorner,
    step,
    setStep,
    stepSize,
    rightAngles,
    setRightAngles,
    nextLength,
    setNextLength,
    pending,
    press,
    finish() {
      if (tool !== 'corner' && pending.length >= placesOf(tool).places) put(pending);
    },
    doorHalf,
    forgetDoor: () => {
      setDoorHalf(null);
      setPending([]);
    },
    letGo: () => setPending([]),
    takeBack() {
      if (pending.length > 0) setPending(pending.slice(0, -1));
    },
    addCorner,
    moveCorner,
    dropCorner: (at, dot, near, field) =>
      moveCorner(
        at,
        helped(
          dot,
          neighbours(at),
          outline.filter((_, i) => i !== at),
          { step: stepSize, rightAngles, near },
        ),
        field,
      ),
    removeCorner(at) {
      edit((draft) => {
        removeAt(draft, [...ringPath, at]);
        if (listAt(draft, ringPath).length === 0) removeAt(draft, ringPath);
      });
      chooseCorner(at > 0 ? at - 1 : null);
    },
    setWall(at, text) {
      const [a, b] = [outline[at], outline[(at + 1) % outline.length]];
      const length = metres(text);
      if (!a || !b || length === null || length <= 0) return;
      moveCorner((at + 1) % outline.length, atLength(a, b, length), `wall-${index}-${at}`);
    },
  };
  return <Context value={draw}>{children}</Context>;
}

/** Length of the wall from a corner to the next, as text. */
export const wallText = ({ outline, units }: Draw, at: number): string => {
  const [a, b] = [outline[at], outline[(at + 1) % outline.length]];
  return a && b && outline.length > 1 ? lengthText(distance(a, b), units) : '';
};
