/** A moment in which messages that have come meanwhile are heard; a timer would take 4 ms. */
const { port1, port2 } = new MessageChannel();
const waiting: (() => void)[] = [];
port1.onmessage = () => waiting.shift()?.();

export function breath(): Promise<void> {
  return new Promise((go) => {
    waiting.push(go);
    port2.postMessage(undefined);
  });
}
