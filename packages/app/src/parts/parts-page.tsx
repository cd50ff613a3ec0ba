export function PartsPage() {
  return <h1>Parts</h1>
}
