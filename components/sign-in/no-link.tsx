/** A link that was used, is too old, or never was one. It doesn't say which: that is nobody's business. */
export function NoLink() {
  return (
    <section className="sheet card">
      <header>
        <h1>This link is no longer good</h1>
      </header>
      <div className="body">
        <p>
          Each works once, for a few days, and a newer one ends it. The lead makes you another under People.
        </p>
        <p>
          <a className="btn" href="/sign-in">
            Sign in
          </a>
        </p>
      </div>
    </section>
  );
}
