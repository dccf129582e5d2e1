import { TriangleAlert } from 'lucide-react';

/** What a person should know before the papers are issued: parts cut off, texts cut, characters the font lacks. */
export const PaperNotices = ({ notices }: { readonly notices: readonly string[] }) => {
  const [first, ...more] = notices;
  if (first === undefined) return null;
  return (
    <details className="papers-warnings" open={notices.length < 3}>
      <summary>
        <TriangleAlert className="papers-sign" size={14} aria-hidden />{' '}
        {notices.length === 1 ? 'One thing' : `${notices.length} things`} to know about these papers
      </summary>
      <ul aria-label="What to know about these papers">
        {[first, ...more].map((n) => (
          <li key={n}>{n}</li>
        ))}
      </ul>
    </details>
  );
};
