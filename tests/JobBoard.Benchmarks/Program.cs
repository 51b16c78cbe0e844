using JobBoard.Benchmarks;

return args switch
{
    ["critical-path", .. var rest] => CriticalPathVerb.Run(new Options(rest)),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("""
        Measures one thing, prints progress on standard error and one JSON object as the last line on standard output.

          critical-path --tasks N --links M
        """);
    return 2;
}
