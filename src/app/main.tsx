import './no-eval.ts';
import { createRoot } from 'react-dom/client';
import '../ui/tokens.css';
import '../ui/base.css';
import { App } from './App.tsx';
import { registerOffline } from './offline.ts';

const root = document.getElementById('root');
if (!root) throw new Error('the page has no root');
createRoot(root).render(<App />);
registerOffline(() => {
  document.documentElement.dataset.update = 'waiting';
});
