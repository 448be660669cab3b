using Heaveline.Files.Yaml;
using YamlDotNet.Core;

namespace Heaveline.Files.Editing;

/// <summary>A value with the characters that it takes up in its text.</summary>
/// <param name="Node">The value.</param>
/// <param name="IsFlow">Whether it is a group or list in brackets.</param>
/// <param name="Style">How a scalar is written.</param>
/// <param name="Start">Its first character: of a scalar its quote, of a block its first key or dash.</param>
/// <param name="End">Behind its last character.</param>
internal sealed record Written(Node Node, bool IsFlow, ScalarStyle Style, int Start, int End)
{
    /// <summary>For each entry of the group, where its key stands and what is written for its value.</summary>
    public IReadOnlyList<(int KeyStart, int KeyEnd, Written Value)> Entries { get; init; } = [];

    /// <summary>What is written for each item of the list.</summary>
    public IReadOnlyList<Written> Items { get; init; } = [];

    /// <summary>Whether it is a text after | or &gt;.</summary>
    public bool IsBlockText => Style is ScalarStyle.Literal or ScalarStyle.Folded;
}
