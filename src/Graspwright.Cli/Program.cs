using Graspwright.Cli;

return CommandLine.Run(args);
