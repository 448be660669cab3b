using System.CommandLine;
using Heaveline.Cli.Output;

namespace Heaveline.Cli.Commands;

/// <summary>On what the passes of a study run.</summary>
internal static class ComputedOn
{
    private const string Gpu = "gpu";

    /// <summary>On this processor.</summary>
    public const string Cpu = "cpu";

    public static Option<string?> Option()
    {
        var option = new Option<string?>("--on")
        {
            Description = "Run the passes on the graphics processor (gpu) or on this one (cpu). Left out: there if it is worth while.",
            HelpName = "gpu|cpu",
        };
        option.AcceptOnlyFromAmong(Gpu, Cpu);
        return option;
    }

    /// <summary>Follows what was given; null: left out.</summary>
    public static void Choose(Streams streams, string? on)
    {
        if (on != Cpu)
        {
            GraphicsProcessors.Choose(streams, on == Gpu);
        }
    }
}
