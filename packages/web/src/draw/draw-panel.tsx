import { useId } from 'react';
import { FLOOR_PARTS } from '../edit/floor-sections.ts';
import { Form } from '../edit/form.tsx';
import { useTarget } from '../edit/form-target.tsx';
import { setAt, textAt } from '../edit/path.ts';
import { TextInput } from '../edit/text-input.tsx';
import { CornerTable } from './corner-table.tsx';
import { useDraw } from './draw-context.tsx';
import { DxfPanel } from './dxf-panel.tsx';
import { JoinPanel } from './join-panel.tsx';
import { PhotoPanel } from './photo-panel.tsx';
import { TapeChoice, TapePanel } from './tape-panel.tsx';
import { Walk } from './walk.tsx';
import { words } from './words.ts';

/** The same floor as the drawing beside it, in numbers: anything drawn can be typed here. */
export function DrawPanel() {
  const draw = useDraw();
  return (
    <>
      <Rooms />
      {draw.area ? (
        <>
          {draw.solved.is === 'none' ? (
            <>
              <Walk />
              <CornerTable />
            </>
          ) : (
            <TapePanel />
          )}
          <TapeChoice />
          <JoinPanel />
          <PhotoPanel key={`photo-${draw.room}`} />
          <DxfPanel />
          <Form key={draw.room} parts={FLOOR_PARTS} base={draw.path} />
        </>
      ) : (
        <p>{words.noRoom}</p>
      )}
    </>
  );
}

function Rooms() {
  const draw = useDraw();
  const id = useId();
  const { change } = useTarget();
  return (
    <section className="group rooms">
      {draw.rooms.length > 1 ? (
        <label className="field">
          <span>{words.rooms}</span>
          <select value={draw.room} onChange={(event) => draw.chooseRoom(Number(event.target.value))}>
            {draw.rooms.map((room, i) => (
              <option key={textAt(room, ['id'])} value={i}>
                {textAt(room, ['name'])}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      {draw.area ? (
        <div className="field">
          <label htmlFor={id}>{words.roomName}</label>
          <TextInput
            id={id}
            key={draw.room}
            value={textAt(draw.area, ['name'])}
            onEnter={(text) => change((draft) => setAt(draft, [...draw.path, 'name'], text), `room-name-${draw.room}`)}
          />
        </div>
      ) : null}
      <div className="ways-of">
        <button type="button" className="press" onClick={() => draw.addRoom(words.newRoom(draw.rooms.length + 1))}>
          {words.addRoom}
        </button>
        {draw.rooms.length > 1 ? (
          <button type="button" className="press" onClick={() => draw.removeRoom(draw.room)}>
            {words.removeRoom}
          </button>
        ) : null}
      </div>
    </section>
  );
}
