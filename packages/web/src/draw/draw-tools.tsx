import { useId } from 'react';
import { textAt } from '../edit/path.ts';
import { useDraw } from './draw-context.tsx';
import { metres } from './lengths.ts';
import { placesOf, TOOLS } from './tools.ts';
import { words } from './words.ts';

/**
 * What a press puts down, in words, and the help a hand gets. How many places are put down stands there from the first
 * on, so that the drawing does not move under the hand between two presses.
 */
export function DrawTools() {
  const draw = useDraw();
  const id = useId();
  const rule = draw.tool === 'corner' ? null : placesOf(draw.tool);
  return (
    <div className="tools">
      <label htmlFor={`${id}-tool`}>{words.tool}</label>
      <select
        id={`${id}-tool`}
        value={draw.tool}
        onChange={(event) => draw.chooseTool(TOOLS.find((tool) => tool === event.target.value) ?? 'corner')}
      >
        {TOOLS.filter((tool) => tool !== 'door' || draw.rooms.length > 1).map((tool) => (
          <option key={tool} value={tool}>
            {words.tools[tool]}
          </option>
        ))}
      </select>
      <label htmlFor={`${id}-step`}>{words.step}</label>
      <input
        id={`${id}-step`}
        className="short"
        value={draw.step}
        aria-invalid={metres(draw.step) === null}
        onChange={(event) => draw.setStep(event.target.value)}
      />
      <label className="tick">
        <input
          type="checkbox"
          checked={draw.rightAngles}
          onChange={(event) => draw.setRightAngles(event.target.checked)}
        />
        {words.rightAngles}
      </label>
      {draw.tool === 'door' && draw.doorHalf ? (
        <p role="status">
          <b>
            {draw.doorHalf.area === textAt(draw.area, ['id'])
              ? words.joins.waiting(textAt(draw.area, ['name']))
              : words.joins.half}
          </b>
          <select
            aria-label={words.joins.room}
            value={draw.room}
            onChange={(event) => draw.chooseRoom(Number(event.target.value))}
          >
            {draw.rooms.map((room, i) => (
              <option key={textAt(room, ['id'])} value={i}>
                {textAt(room, ['name'])}
              </option>
            ))}
          </select>
          <button type="button" className="press" onClick={draw.forgetDoor}>
            {words.joins.forget}
          </button>
        </p>
      ) : null}
      {rule ? (
        <p role="status">
          <b>{words.started(words.tools[draw.tool], draw.pending.length, rule.places)}</b>
          {rule.open ? (
            <button
              type="button"
              className="press main"
              disabled={draw.pending.length < rule.places}
              onClick={draw.finish}
            >
              {words.finish}
            </button>
          ) : null}
          <button type="button" className="press" disabled={draw.pending.length === 0} onClick={draw.takeBack}>
            {words.undoPlace}
          </button>
          <button type="button" className="press" disabled={draw.pending.length === 0} onClick={draw.letGo}>
            {words.letGo}
          </button>
        </p>
      ) : null}
    </div>
  );
}
