import { type ReactNode, useMemo } from 'react';
import { useJob } from '../job/job-context.tsx';
import { type FormTarget, FormTargetProvider } from './form-target.tsx';

/** Forms inside edit the open job; what the plan says is wrong with it stands at its fields. */
export function JobTarget({ children }: { readonly children: ReactNode }) {
  const { file, change, issues, planned, catalogue } = useJob();
  const beside = catalogue.get().body;
  const target = useMemo<FormTarget>(() => {
    const wrong = issues.filter((issue) => issue.file === 'job').map(({ path, text, code }) => ({ path, text, code }));
    const odd = (planned?.warnings ?? []).map(({ path, text }) => ({ path, text, odd: true }));
    return {
      root: file,
      beside,
      change: (edit, field) => change((draft) => edit(draft), field),
      issues: [...wrong, ...odd],
      zone: file.place.zone,
    };
  }, [file, beside, change, issues, planned]);
  return <FormTargetProvider value={target}>{children}</FormTargetProvider>;
}
