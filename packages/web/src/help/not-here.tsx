/** Said in place of a piece of the page that is read only when it is wanted, and did not come. */
export function NotHere() {
  return (
    <p className="refusal" role="alert">
      This part of the page did not come; the server does not answer. Load the page anew when it is back.
    </p>
  );
}
