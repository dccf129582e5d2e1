import type { Result } from '../../kernel/result.ts';
import { Field } from '../common/Field.tsx';

/** One field for many things: what they share, or that they differ; what is typed is set for all. */
export const ManyField = <T,>({
  label,
  values,
  format,
  parse,
  disabled,
  hint,
  onCommit,
}: {
  readonly label: string;
  readonly values: readonly T[];
  readonly format: (value: T) => string;
  readonly parse: (text: string) => Result<T>;
  readonly disabled: boolean;
  readonly hint?: string | undefined;
  readonly onCommit: (value: T) => void;
}) => {
  const [first] = values;
  if (first === undefined) return null;
  return (
    <Field
      label={label}
      value={first}
      mixed={values.some((v) => format(v) !== format(first))}
      format={format}
      parse={parse}
      disabled={disabled}
      hint={hint}
      onCommit={onCommit}
    />
  );
};
