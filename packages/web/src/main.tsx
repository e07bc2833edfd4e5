import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { watchVersion } from './keep/program-version.ts';
import './look/tokens.css';
import './look/look.css';
import './look/lists.css';
import './look/sheet.css';
import './look/working.css';
import './look/pages.css';
import './look/narrow.css';
import './look/phone.css';

const root = document.getElementById('root');
if (!root) throw new Error('the page has no place for the app');
watchVersion();
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
