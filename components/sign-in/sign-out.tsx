/** The way out. A plain form: it works before any script has come, and ends the session on the server. */
export function SignOut() {
  return (
    <form method="post" action="/api/sign-out">
      <button className="btn" type="submit">
        Sign out
      </button>
    </form>
  );
}
