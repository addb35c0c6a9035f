/** Made from the contract as the board is built: see contract-as-data.ts beside the board's configuration. */
declare module 'contract:ways' {
  import type { Method, RouteName } from '@stokehold/domain/contract';
  const ways: Readonly<Record<RouteName, { readonly method: Method; readonly path: string; readonly wants: readonly ('key' | 'sentAt')[] }>>;
  export default ways;
}
declare module 'contract:hand' {
  import type { Shapes } from './shape.js';
  const shapes: Shapes;
  export default shapes;
}
declare module 'contract:desk' {
  import type { Shapes } from './shape.js';
  const shapes: Shapes;
  export default shapes;
}
