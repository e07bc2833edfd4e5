interface SaidListProps {
  readonly title: string;
  readonly lines: readonly string[];
  readonly className?: string;
}

/** Sentences under a heading, each once. */
export function SaidList({ title, lines, className = 'notes' }: SaidListProps) {
  return (
    <section className={className}>
      <h3>{title}</h3>
      <ul>
        {[...new Set(lines)].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
