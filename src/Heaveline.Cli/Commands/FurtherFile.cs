using System.CommandLine;
using Heaveline.Cli.Output;
using Heaveline.Quantities;

namespace Heaveline.Cli.Commands;

/// <summary>A file of an answer that a command makes by other means than the answer's own.</summary>
/// <param name="Option">The option that names it.</param>
/// <param name="Ending">How its name must end.</param>
/// <param name="Of">Makes it, of what was given, the answer and the reader's units.</param>
internal sealed record FurtherFile<TAnswer>(Option<string?> Option, string Ending, Func<Given, TAnswer, ReaderUnits, CancellationToken, byte[]> Of)
{
    /// <summary>Leaves the command to the program that can make it, where this one cannot.</summary>
    public Action<Streams> Leaves { get; init; } = _ => { };
}
