/** Hatches shared by every drawing of the page; one idea, one texture, so that black and white still tells them apart. */
export function Patterns() {
  return (
    <svg className="patterns" width="0" height="0" aria-hidden="true">
      <defs>
        <pattern id="wrong" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V5" stroke="var(--stroke)" strokeWidth="1" />
        </pattern>
        <pattern id="shut" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" stroke="var(--stroke)" strokeWidth="1.6" />
        </pattern>
        <pattern id="some" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V9" stroke="var(--stroke)" strokeWidth="1" />
        </pattern>
        <pattern id="sun" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(-62)">
          <path d="M0 0V7" stroke="var(--warm)" strokeWidth="1.1" />
        </pattern>
        <pattern id="oil" width="5" height="5" patternUnits="userSpaceOnUse">
          <circle cx="1.2" cy="1.2" r=".9" fill="var(--ink)" />
          <circle cx="3.8" cy="3.6" r=".7" fill="var(--ink)" />
        </pattern>
        <pattern id="wet" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" stroke="var(--chalk)" strokeWidth="1.2" />
        </pattern>
        <pattern id="lanes" width="14" height="14" patternUnits="userSpaceOnUse">
          <path d="M0 0H14" stroke="var(--stroke)" strokeWidth="1" />
        </pattern>
      </defs>
    </svg>
  );
}
