import { useLayoutEffect, useRef, useState } from "preact/hooks";

// useWidth watches how wide a box is drawn; 0 until it is.
export function useWidth() {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const watch = new ResizeObserver(() => setWidth(box.current!.clientWidth));
    watch.observe(box.current!);
    return () => watch.disconnect();
  }, []);
  return { box, width };
}
