namespace JobBoard.EndToEnd.Screens;

/// <summary>
/// What is put into every page before it loads: an observer that notes when a change that was waited for is shown, and when
/// a form was posted. It writes nothing into the page and sends nothing.
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
          const eyes = { posted: 0, watch(list) { const already = list.filter(holds); for (const w of list) waited.set(w.key, w); return already.map((w) => w.key); }, met: (keys) => keys.map((k) => met[k] ?? -1) };
          Object.defineProperty(window, "jobboardEyes", { value: eyes });
          const send = window.fetch;
          window.fetch = async (...what) => {
            if (String(what[0]?.url ?? what[0]).includes("/do/")) eyes.posted = now();
            return await send(...what);
          };
          new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
        })();
        """;
}
