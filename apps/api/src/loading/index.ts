export { LoadingModule } from './loading.module.js';
