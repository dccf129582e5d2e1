import { useId, useState } from 'react';
import { problemText, type Result } from '../../kernel/result.ts';

interface FieldProps<T> {
  readonly label: string;
  readonly value: T;
  readonly format: (value: T) => string;
  readonly parse: (text: string) => Result<T>;
  readonly onCommit: (value: T) => void;
  readonly hint?: string | undefined;
  readonly disabled?: boolean;
  readonly mixed?: boolean;
}

/** A text field checked as typed. Enter or leaving commits, Escape takes the typing back, a bad value says why and changes nothing. */
export const Field = <T,>({
  label,
  value,
  format,
  parse,
  onCommit,
  hint,
  disabled,
  mixed,
}: FieldProps<T>) => {
  const id = useId();
  const [draft, setDraft] = useState<string | undefined>(undefined);
  const shown = draft ?? (mixed ? '' : format(value));
  const parsed = draft === undefined ? undefined : parse(draft);
  const error = parsed && !parsed.ok ? problemText(parsed.error) : undefined;

  const commit = (): void => {
    if (draft === undefined) return;
    if (draft.trim() === '' && mixed) return setDraft(undefined);
    if (parsed?.ok) {
      if (draft !== format(value) || mixed) onCommit(parsed.value);
      setDraft(undefined);
    }
  };

  return (
    <div className="row">
      <label className="row-label" htmlFor={id}>
        {label}
      </label>
      <div className="row-value">
        <input
          id={id}
          className="inline-input"
          value={shown}
          placeholder={mixed ? 'mixed' : undefined}
          disabled={disabled}
          aria-invalid={error !== undefined}
          aria-describedby={error ? `${id}-error` : undefined}
          autoComplete="off"
          spellCheck={false}
          onChange={(e) => setDraft(e.target.value)}
          onBlur={() => {
            commit();
            if (error) setDraft(undefined);
          }}
          onKeyDown={(e) => {
            if (e.key === 'Enter') commit();
            // With nothing typed, Escape is for what is around: a dialog closes.
            if (e.key === 'Escape' && draft !== undefined) {
              setDraft(undefined);
              e.stopPropagation();
            }
          }}
        />
        {hint ? <span className="row-hint">{hint}</span> : null}
        {error ? (
          <div id={`${id}-error`} className="field-error" role="alert">
            {error}
          </div>
        ) : null}
      </div>
    </div>
  );
};

/** A fixed line of the same shape as a field. */
export const Row = ({ label, children }: { readonly label: string; readonly children: React.ReactNode }) => (
  <div className="row">
    <span className="row-label">{label}</span>
    <div className="row-value">{children}</div>
  </div>
);
