// Whether the window is a desk's.

import { useEffect, useState } from "preact/hooks";

export function useWide(): boolean {
  const query = matchMedia("(min-width: 1120px)");
  const [wide, setWide] = useState(query.matches);
  useEffect(() => {
    const change = () => setWide(query.matches);
    query.addEventListener("change", change);
    return () => query.removeEventListener("change", change);
  }, []);
  return wide;
}
