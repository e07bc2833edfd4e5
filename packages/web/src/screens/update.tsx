import { registerSW } from 'virtual:pwa-register';
import { useEffect, useRef, useState } from 'react';
import { words } from '../words.ts';

type Said = 'update' | 'offline' | null;

/** A newer version waits until the person says so; an update never reloads a half-typed field. */
export function Update() {
  const [said, setSaid] = useState<Said>(null);
  const use = useRef<((reload?: boolean) => Promise<void>) | null>(null);
  useEffect(() => {
    use.current = registerSW({
      onNeedRefresh: () => setSaid('update'),
      onOfflineReady: () => setSaid((before) => before ?? 'offline'),
    });
  }, []);
  return (
    <div className="update" role="status">
      {said ? (
        <section>
          <p>{said === 'update' ? words.update.ready : words.update.offline}</p>
          {said === 'update' ? (
            <button type="button" className="press main" onClick={() => void use.current?.(true)}>
              {words.update.now}
            </button>
          ) : null}
          <button type="button" className="press" onClick={() => setSaid(null)}>
            {said === 'update' ? words.update.later : words.kept.dismiss}
          </button>
        </section>
      ) : null}
    </div>
  );
}
