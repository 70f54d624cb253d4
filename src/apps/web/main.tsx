import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { makeQueryClient } from './api/query-client.ts';
import { App } from './app.tsx';
import { keepPages } from './offline/keep-pages.ts';
import { Recorder } from './record/recorder.tsx';
import './styles/index.css';

keepPages();
createRoot(document.getElementById('root')!).render(
  <StrictMode>
    <QueryClientProvider client={makeQueryClient()}>
      <Recorder>
        <App />
      </Recorder>
    </QueryClientProvider>
  </StrictMode>,
);
