namespace Heaveline.Cli.Output;

/// <summary>A command that ends early: what to say on the error stream and with which exit code.</summary>
internal sealed class Stopped(string message, int code) : Exception(message)
{
    public int Code { get; } = code;
}
