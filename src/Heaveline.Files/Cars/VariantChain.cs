using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>A car file with the variants that lie over it, from the file that was asked for down to the car itself.</summary>
internal sealed class VariantChain
{
    /// <summary>Most variants over one car file.</summary>
    public const int Longest = 8;

    private readonly string? garage;
    private readonly List<SourceText> sources = [];
    private readonly List<VariantAsWritten> variants = [];

    /// <summary>A chain that begins at a text.</summary>
    /// <param name="source">The text.</param>
    /// <param name="garage">The folder that bases must lie in; null when there is none.</param>
    public VariantChain(SourceText source, string? garage)
    {
        this.garage = garage;
        sources.Add(source);
        Reader = new Reader(source);
    }

    /// <summary>Gathers the refusals of all files.</summary>
    public Reader Reader { get; }

    /// <summary>All texts, the first one first.</summary>
    public IReadOnlyList<SourceText> Sources => sources;

    /// <summary>Names of all variants, the one nearest to the car first.</summary>
    public string Names => string.Join(", ", variants.AsEnumerable().Reverse().Select(variant => variant.Name));

    /// <summary>Note of the variant nearest to the asked one that has one.</summary>
    public string? Note => variants.Select(variant => variant.Note).FirstOrDefault(note => note is not null);

    /// <summary>The whole document, or null with the refusals at the reader.</summary>
    public Node? Put()
    {
        var paths = new List<string> { Path.GetFullPath(sources[0].File) };
        var own = Reader;
        while (true)
        {
            var source = sources[^1];
            var root = YamlTree.Of(own);
            if (root is null || !VariantWords.IsVariant(root))
            {
                Take(own);
                return root is null ? null : Whole(source == sources[0] ? root : root.In(source.File, ""));
            }

            if (!VariantWords.Shape.TryRead(root, own, out var variant))
            {
                Take(own);
                return null;
            }

            variants.Add(variant with { Change = variant.Change.In(source.File, "change") });
            var next = Next(variant, root.At(VariantWords.Base.Name)!, paths, own);
            Take(own);
            if (next is null)
            {
                return null;
            }

            sources.Add(next);
            own = new Reader(next);
        }
    }

    private SourceText? Next(VariantAsWritten variant, Node at, List<string> paths, Reader own)
    {
        SourceText? Refuse(string message, string advice)
        {
            own.Refuse(at.Place, $"{at.Subject} {message}", advice);
            return null;
        }

        if (garage is null)
        {
            return Refuse($"names {variant.Base}, and this text lies in no folder.", "Save it beside its base.");
        }

        var (path, problem) = Confined.Resolve(garage, sources[^1].File, variant.Base);
        if (problem is not null)
        {
            return Refuse($"is {variant.Base}, which {problem}.", "Name a file in the same folder, or give a wider folder as the garage.");
        }

        if (paths.Contains(path))
        {
            return Refuse($"is {variant.Base}, which is a variant of this file again.", "Let the chain end at a car file.");
        }

        if (variants.Count > Longest)
        {
            return Refuse($"makes a chain of {variants.Count} variants; it must have {Longest} or fewer.", "Write the car out in a file of its own.");
        }

        // A file is named as one would name it from the same place as the first.
        var shown = Path.Combine(Path.GetDirectoryName(sources[^1].File) ?? "", variant.Base.Replace('\\', '/'));
        var (source, refusal) = SourceText.Load(shown, YamlTree.Longest);
        if (refusal is not null)
        {
            return Refuse($"is {variant.Base}: {refusal.Message}", refusal.Advice);
        }

        paths.Add(path);
        return source;
    }

    private Node Whole(Node car)
    {
        var whole = car;
        foreach (var variant in variants.AsEnumerable().Reverse())
        {
            whole = Overlay.Of(whole, variant.Change, CarWords.Shape);
            CoilSlips.CheckChange(whole, variant.Change, Reader);
        }

        return whole;
    }

    // What a base's own text refuses, with its file's name.
    private void Take(Reader own)
    {
        if (own == Reader)
        {
            return;
        }

        foreach (var refusal in own.Refusals)
        {
            Reader.Refuse(new Place(refusal.Line, refusal.Column, refusal.Length, refusal.File), refusal.Message, refusal.Advice);
        }
    }
}
