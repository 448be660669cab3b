using System.Reflection;
using System.Reflection.Emit;

namespace Heaveline.Tests.House;

/// <summary>
/// Which type of an assembly uses which other of it, read from what the compiler made: using lines, names in
/// full, pages and inferred types are all in it.
/// </summary>
/// <remarks>Constants and nameof leave no trace there.</remarks>
internal static class TypeUses
{
    private const BindingFlags Own =
        BindingFlags.DeclaredOnly | BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic;

    private static readonly Dictionary<short, OpCode> Codes =
        typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static).Select(f => (OpCode)f.GetValue(null)!).ToDictionary(code => code.Value);

    /// <summary>Every use of one type by another, both the outermost ones, once.</summary>
    public static IReadOnlySet<(Type User, Type Used)> Of(Assembly assembly) => assembly.GetTypes()
        .SelectMany(type =>
            UsedBy(type).SelectMany(Parts).Where(used => used.Assembly == assembly).Select(used => (User: Outermost(type), Used: Outermost(used))))
        .Where(use => use.User != use.Used)
        .ToHashSet();

    /// <summary>Every member that a body of an assembly speaks of, with the type in whose body it stands.</summary>
    public static IEnumerable<(Type User, MemberInfo Member)> Members(Assembly assembly) => assembly.GetTypes().SelectMany(type =>
        ((IEnumerable<MethodBase>)[.. type.GetMethods(Own), .. type.GetConstructors(Own)])
            .SelectMany(method => Members(method, type)).OfType<MemberInfo>().Select(member => (type, member)));

    private static Type Outermost(Type type) =>
        type.DeclaringType is { } outer ? Outermost(outer) : type.IsGenericType ? type.GetGenericTypeDefinition() : type;

    private static IEnumerable<Type> Parts(Type? type) =>
        type is null || type.IsGenericParameter ? []
        : type.HasElementType ? Parts(type.GetElementType())
        : type.IsGenericType ? type.GetGenericArguments().SelectMany(Parts).Prepend(type)
        : [type];

    private static IEnumerable<Type?> UsedBy(Type type) =>
    [
        type.BaseType,
        .. type.GetInterfaces(),
        .. type.GetGenericArguments().Where(p => p.IsGenericParameter).SelectMany(p => p.GetGenericParameterConstraints()),
        .. type.GetFields(Own).Select(field => field.FieldType),
        .. type.GetMethods(Own).SelectMany(method => Named(method).Concat(Spoken(method, type))),
        .. type.GetConstructors(Own).SelectMany(method => Named(method).Concat(Spoken(method, type))),
    ];

    private static IEnumerable<Type?> Named(MemberInfo? member) => member switch
    {
        Type type => [type],
        FieldInfo field => [field.DeclaringType, field.FieldType],
        MethodInfo method =>
            [method.DeclaringType, method.ReturnType, .. Passed(method), .. method.IsGenericMethod ? method.GetGenericArguments() : []],
        MethodBase method => [method.DeclaringType, .. Passed(method)],
        _ => [],
    };

    private static IEnumerable<Type> Passed(MethodBase method) => method.GetParameters().Select(parameter => parameter.ParameterType);

    private static IEnumerable<Type?> Spoken(MethodBase method, Type type)
    {
        if (method.GetMethodBody() is not { } body)
        {
            return [];
        }

        var caught = body.ExceptionHandlingClauses.Where(clause => clause.Flags == ExceptionHandlingClauseOptions.Clause);
        return
        [
            .. body.LocalVariables.Select(local => local.LocalType),
            .. caught.Select(clause => clause.CatchType),
            .. Members(method, type).SelectMany(Named),
        ];
    }

    // What the body of a method speaks of (ECMA-335, partition III: an operation and its operand after another).
    private static IEnumerable<MemberInfo?> Members(MethodBase method, Type type)
    {
        if (method.GetMethodBody()?.GetILAsByteArray() is not { } bytes)
        {
            yield break;
        }

        for (var at = 0; at < bytes.Length;)
        {
            var code = Codes[bytes[at] == 0xFE ? (short)(0xFE00 | bytes[++at]) : bytes[at]];
            at++;
            if (code.OperandType is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType)
            {
                yield return method.Module.ResolveMember(
                    BitConverter.ToInt32(bytes, at), type.GetGenericArguments(), method.IsGenericMethod ? method.GetGenericArguments() : []);
            }

            at += code.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(bytes, at)),
                _ => 4,
            };
        }
    }
}
