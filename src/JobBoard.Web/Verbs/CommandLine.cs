using JobBoard.Domain.Entries;
using JobBoard.Scheduling;
using JobBoard.Shop.Demo;
using JobBoard.Shop.Templates;
using JobBoard.Storage;

namespace JobBoard.Web.Verbs;

/// <summary>What the program is started with: a verb and its options.</summary>
public static class CommandLine
{
    /// <summary>Exit code for a command line that cannot be understood.</summary>
    public const int Misused = 2;

    /// <summary>Runs a verb; serving when none is given.</summary>
    /// <returns>0 when it did what was asked, 1 when it could not, 2 when it was not understood.</returns>
    public static async Task<int> Run(string[] args, TextWriter output, TextWriter errors)
    {
        try
        {
            return await RunVerb(args, output, errors).ConfigureAwait(false);
        }
        catch (CommandLineException e)
        {
            await errors.WriteLineAsync(e.Message).ConfigureAwait(false);
            await errors.WriteLineAsync("'jobboard help' lists what there is.").ConfigureAwait(false);
            return Misused;
        }
        catch (Exception e) when (e is StorageException or UnknownEntryException or DemoException or TemplateException or IOException or UnauthorizedAccessException)
        {
            await errors.WriteLineAsync(e.Message).ConfigureAwait(false);
            return 1;
        }
    }

    private static Task<int> RunVerb(string[] args, TextWriter output, TextWriter errors)
    {
        var named = args.Length > 0 && !args[0].StartsWith('-');
        var verb = named ? args[0] : "serve";
        var rest = named ? args[1..] : args;
        return verb switch
        {
            "serve" when rest is ["--help"] or ["-h"] => HelpVerb.Run(output),
            "serve" => ServeVerb.Run(Options.Read(verb, rest, "data", "listen", "!demo", "demo-pace", "paper-at"), output),
            "rebuild" => RebuildVerb.Run(Options.Read(verb, rest, "data"), output),
            "verify" => VerifyVerb.Run(Options.Read(verb, rest, "data"), output),
            "health" => HealthVerb.Run(Options.Read(verb, rest, "listen"), output),
            "paper" => PaperVerb.Run(rest, output),
            "dates" => Task.FromResult(DatesCommand.Run(rest, output, errors)),
            "help" => HelpVerb.Run(output),
            _ => throw new CommandLineException($"There is no verb '{verb}'."),
        };
    }
}

/// <summary>The command line cannot be understood; the message says which part of it.</summary>
public sealed class CommandLineException(string message) : Exception(message);
