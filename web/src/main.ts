import './shell/app.ts';
