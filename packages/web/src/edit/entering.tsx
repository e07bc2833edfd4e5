import { DrawCanvas } from '../draw/draw-canvas.tsx';
import { DrawProvider } from '../draw/draw-context.tsx';
import { TracingProvider } from '../draw/photo-context.tsx';
import { EditPanel } from './edit-panel.tsx';
import { JobTarget } from './job-target.tsx';
import './edit.css';
import '../draw/draw.css';
import type { ReactNode } from 'react';

interface EnteringProps {
  readonly step: string;
  readonly section: string;
  /** The floor as the step draws it, for parts that are not drawn. */
  readonly floor: ReactNode;
}

/** The floor and the facts of a job while somebody enters them. */
export function Entering({ step, section, floor }: EnteringProps) {
  return (
    <JobTarget>
      <DrawProvider>
        <TracingProvider>
          {section === 'floor' ? <DrawCanvas /> : floor}
          <EditPanel step={step} section={section} />
        </TracingProvider>
      </DrawProvider>
    </JobTarget>
  );
}
