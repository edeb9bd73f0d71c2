using System.Text;
using Mastwright.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return await CommandLine.RunAsync(args).ConfigureAwait(false);
