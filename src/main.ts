import { mount } from './pages/mount.tsx';

mount(document.getElementById('root') as HTMLElement);
