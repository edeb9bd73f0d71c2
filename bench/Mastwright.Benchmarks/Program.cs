using Mastwright.Benchmarks;

return CommandLine.Run(args);
