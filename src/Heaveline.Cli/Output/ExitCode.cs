namespace Heaveline.Cli.Output;

/// <summary>How the program ends.</summary>
internal static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>The input was refused: what and where is on the error stream.</summary>
    public const int Refused = 1;

    /// <summary>The command line was wrong.</summary>
    public const int WrongUsage = 2;

    /// <summary>It could not be computed: a pass left the model's range, a file could not be written.</summary>
    public const int NotComputed = 3;

    /// <summary>A fault of the program itself.</summary>
    public const int Fault = 4;
}
