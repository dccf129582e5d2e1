import { useId, useState } from 'react';
import './typed.css';
import { problemText, type Result } from '../../kernel/result.ts';

interface TypedCellProps<T> {
  readonly label: string;
  readonly value: T;
  readonly format: (value: T) => string;
  readonly parse: (text: string) => Result<T>;
  readonly onCommit: (value: T) => void;
  readonly disabled?: boolean;
  readonly wide?: boolean;
  readonly placeholder?: string;
}

/** A small field in a table. Enter or leaving commits, Escape takes the typing back, a bad value says why. */
export const TypedCell = <T,>(p: TypedCellProps<T>) => {
  const id = useId();
  const [draft, setDraft] = useState<string | undefined>(undefined);
  const parsed = draft === undefined ? undefined : p.parse(draft);
  const error = parsed && !parsed.ok ? problemText(parsed.error) : undefined;
  const commit = (): void => {
    if (draft === undefined || !parsed?.ok) return;
    if (draft !== p.format(p.value)) p.onCommit(parsed.value);
    setDraft(undefined);
  };
  return (
    <span className="typed">
      <input
        className={p.wide ? 'typed-input wide' : 'typed-input'}
        aria-label={p.label}
        aria-invalid={error !== undefined}
        aria-describedby={error ? id : undefined}
        value={draft ?? p.format(p.value)}
        placeholder={p.placeholder}
        disabled={p.disabled}
        autoComplete="off"
        spellCheck={false}
        onChange={(e) => setDraft(e.target.value)}
        onBlur={() => {
          commit();
          if (error) setDraft(undefined);
        }}
        onKeyDown={(e) => {
          if (e.key === 'Enter') commit();
          if (e.key === 'Escape') setDraft(undefined);
        }}
      />
      {error ? (
        <span id={id} className="typed-error field-error" role="alert">
          {error}
        </span>
      ) : null}
    </span>
  );
};
