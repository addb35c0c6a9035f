export { LinksModule } from './links.module.js';
