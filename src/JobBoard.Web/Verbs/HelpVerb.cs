namespace JobBoard.Web.Verbs;

/// <summary><c>jobboard help</c>.</summary>
internal static class HelpVerb
{
    private const string Words =
        """
        Job Board: a workshop's board for engine conversions.

        jobboard [serve] [--data DIR] [--listen ADDRESS] [--paper-at HH:MM] [--demo [--demo-pace N]]
            Serves the shop in DIR (by default a folder of this user's application data) at ADDRESS (by default
            http://127.0.0.1:5080). Plain HTTP: beyond this machine only on a network you trust.
            --paper-at HH:MM  when the evening's sheets are written into DIR/paper, in the shop's time; without it when the
                    shop closes for the day.
            --demo  a made-up shop in a throw-away folder, on this machine only.
            --demo-pace N  the demo's time runs N times as fast (1 to 3600), closed hours skipped, and a scripted crew
                    carries the car before its harness on to its first start: at 60 in less than ten minutes.
        jobboard dates FOLDER [--json]
            Works out dates and floats of the network in FOLDER (tasks.csv, links.csv).
        jobboard rebuild [--data DIR]
            Fills the history tables anew from the day book. The server must not be running.
        jobboard verify [--data DIR]
            Reads the whole day book and says whether every entry follows from the one before. The server must not be running.
        jobboard paper [--data DIR] OUT
            Writes a sheet of each car and one of the shop into the folder OUT, to be printed from any browser. The server
            must not be running: it has each car's sheet at /cars/ID/paper, and writes all every evening.
        jobboard health [--listen ADDRESS]
            Asks a running server whether it is well; exit code 0 if so.
        jobboard help
            This.
        """;

    public static async Task<int> Run(TextWriter output)
    {
        await output.WriteLineAsync(Words).ConfigureAwait(false);
        return 0;
    }
}
