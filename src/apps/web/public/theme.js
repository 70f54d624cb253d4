// Before the first paint: the look that the person chose last; none chosen means the look of the system.
try {
  const look = localStorage.getItem('salvor.look');
  if (look === 'light' || look === 'dark') document.documentElement.dataset.look = look;
} catch {
  // Storage is closed to us: the look of the system stays.
}
