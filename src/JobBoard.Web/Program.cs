return await JobBoard.Web.Verbs.CommandLine.Run(args, Console.Out, Console.Error);
