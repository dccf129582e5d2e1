import { useEffect, useId, useRef, useState } from 'react';
import { problemText, type Result } from '../../kernel/result.ts';

interface CellFieldProps<T> {
  readonly label: string;
  readonly column: string;
  readonly value: string;
  readonly parse: (text: string) => Result<T>;
  /** Applies the value; gives the reason in words where it is refused. */
  readonly onCommit: (value: T) => string | undefined;
  readonly disabled?: boolean;
  readonly className?: string;
}

/** A field in a table cell. As everywhere: Enter or leaving commits, Escape takes the typing back, a bad value says why. */
export const CellField = <T,>({
  label,
  column,
  value,
  parse,
  onCommit,
  disabled,
  className,
}: CellFieldProps<T>) => {
  const id = useId();
  const [draft, setDraft] = useState<string | undefined>(undefined);
  const [refused, setRefused] = useState('');
  const parsed = draft === undefined ? undefined : parse(draft);
  const error = parsed && !parsed.ok ? problemText(parsed.error) : refused;

  const reason = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (error !== '') reason.current?.scrollIntoView({ block: 'nearest' });
  }, [error]);

  /** Whether nothing stands in the way any more. */
  const commit = (): boolean => {
    if (draft === undefined) return true;
    if (!parsed?.ok) return false;
    const why = draft.trim() === value ? undefined : onCommit(parsed.value);
    setRefused(why ?? '');
    if (why === undefined) setDraft(undefined);
    return why === undefined;
  };
  const back = (): void => {
    setDraft(undefined);
    setRefused('');
  };

  return (
    <>
      <input
        className={`inline-input cell-input ${className ?? ''}`}
        aria-label={label}
        data-column={column}
        value={draft ?? value}
        disabled={disabled}
        aria-invalid={error !== ''}
        aria-describedby={error ? id : undefined}
        autoComplete="off"
        spellCheck={false}
        onChange={(e) => {
          setDraft(e.target.value);
          setRefused('');
        }}
        onBlur={() => {
          if (refused === '') commit();
          back();
        }}
        onKeyDown={(e) => {
          // A refused value keeps the field, so that its reason can be read.
          if (e.key === 'Enter' && !commit()) e.stopPropagation();
          if (e.key === 'Escape') {
            back();
            e.stopPropagation();
          }
        }}
      />
      {error ? (
        <span ref={reason} id={id} className="cell-error" role="alert">
          {error}
        </span>
      ) : null}
    </>
  );
};
