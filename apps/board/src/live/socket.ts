/** In a file of its own, so that it is fetched by itself, after the first picture. */
export { io } from 'socket.io-client';
