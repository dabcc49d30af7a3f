/** The hands of every chord of the chosen section. */
export function HandsPage() {
  return <h2>Hands</h2>;
}
