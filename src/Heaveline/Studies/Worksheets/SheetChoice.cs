namespace Heaveline.Studies;

/// <summary>What worksheets have in common.</summary>
internal static class SheetChoice
{
    /// <summary>The word under which they stand.</summary>
    public const string Group = "worksheet";

    public static Choice Of(string name, string says, string helpName) =>
        new() { Name = name, Kind = ChoiceKind.Quantity, Says = says, HelpName = helpName };

    public static Choice Needed(string name, string says, string helpName) => Of(name, says, helpName) with { IsNeeded = true };

    public static Choice Repeated(string name, string says, string helpName) => Of(name, says, helpName) with { IsRepeated = true };

    public static Choice Tick(string name, string says) => new() { Name = name, Kind = ChoiceKind.Tick, Says = says };
}
