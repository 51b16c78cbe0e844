using JobBoard.Benchmarks;
using JobBoard.Benchmarks.Kill;

return args switch
{
    ["critical-path", .. var rest] => CriticalPathVerb.Run(new Options(rest)),
    ["evaluate", .. var rest] => await EvaluateVerb.Run(new Options(rest)),
    ["kill", .. var rest] => await KillVerb.Run(new Options(rest)),
    [ShopProcess.Verb, .. var rest] => await ShopServer.Run(new Options(rest)),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("""
        Measures one thing, prints progress on standard error and one JSON object as the last line on standard output.

          critical-path --tasks N --links M
          evaluate --entries N
          kill --rounds R [--clients C] [--seed S]
        """);
    return 2;
}
