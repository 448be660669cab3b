using Heaveline.Cli.Output;

namespace Heaveline.Cli.Commands;

/// <summary>The graphics processors, left to the program beside this one: what runs there is compiled while it runs.</summary>
internal static class GraphicsProcessors
{
    /// <summary>Turns into that program where all that can is to run there; else everything runs on the processor.</summary>
    public static void Choose(Streams streams, bool all)
    {
        if (all)
        {
            Serving.Become(streams);
        }
    }
}
