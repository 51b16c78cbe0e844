namespace JobBoard.EndToEnd.Screens;

/// <summary>
/// What is put into every page before it loads: an observer that notes when a change that was waited for is shown, and when
/// the answer to a posted form came. It writes nothing into the page and sends nothing.
/// </summary>
internal static class Eyes
{
    /// <summary>The script. Times are those of the machine, in milliseconds, the same in every page.</summary>
    public const string Script = """
        (() => {
          const now = () => performance.timeOrigin + performance.now();
          const waited = new Map();
          const met = {};
          const holds = (w) => {
            const found = document.querySelector(w.selector);
            const has = found !== null && (w.text === null || found.textContent.includes(w.text));
            return w.gone ? !has : has;
          };
          const look = () => {
            for (const [key, w] of waited) if (holds(w)) { met[key] = now(); waited.delete(key); }
          };
          const eyes = { answered: 0, posts: 0, watch(list) { for (const w of list) if (holds(w)) met[w.key] = 0; else waited.set(w.key, w); }, met: (keys) => keys.map((k) => met[k] ?? -1) };
          Object.defineProperty(window, "jobboardEyes", { value: eyes });
          const send = window.fetch;
          window.fetch = async (...what) => {
            const answer = await send(...what);
            if (String(what[0]?.url ?? what[0]).includes("/do/")) { eyes.answered = now(); eyes.posts++; }
            return answer;
          };
          new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
        })();
        """;
}
