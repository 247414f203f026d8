package org.thirstline.validation.broken;

import java.util.List;
import java.util.Map;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/** Makes a slip in a compiled class. Confined to one thread. */
final class SlipOfThePen extends ClassVisitor {

    /** Double and whole-number instructions of an operation, in the same order for each. */
    private static final Map<String, List<Integer>> OPERATIONS = Map.of(
            "+", List.of(Opcodes.DADD, Opcodes.IADD),
            "-", List.of(Opcodes.DSUB, Opcodes.ISUB),
            "*", List.of(Opcodes.DMUL, Opcodes.IMUL),
            "/", List.of(Opcodes.DDIV, Opcodes.IDIV));

    private final Slip slip;
    private int made;

    private SlipOfThePen(Slip slip, ClassVisitor writer) {
        super(Opcodes.ASM9, writer);
        this.slip = slip;
    }

    /** Returns the class with the slip in it; refuses if there is nothing to get wrong. */
    static byte[] in(byte[] compiled, Slip slip) {
        ClassReader reader = new ClassReader(compiled);
        ClassWriter writer = new ClassWriter(reader, 0);
        SlipOfThePen pen = new SlipOfThePen(slip, writer);
        reader.accept(pen, 0);
        if (pen.made == 0) {
            throw new IllegalStateException("nothing to change for " + slip);
        }
        return writer.toByteArray();
    }

    @Override
    public MethodVisitor visitMethod(int access, String name, String descriptor, String signature, String[] thrown) {
        MethodVisitor method = super.visitMethod(access, name, descriptor, signature, thrown);
        return name.equals(slip.method()) ? new Method(method) : method;
    }

    private final class Method extends MethodVisitor {

        Method(MethodVisitor writer) {
            super(Opcodes.ASM9, writer);
        }

        @Override
        public void visitLdcInsn(Object value) {
            boolean meant =
                    !slip.isOperation() && value instanceof Double number && number == Double.parseDouble(slip.from());
            if (meant) {
                made++;
            }
            super.visitLdcInsn(meant ? Double.valueOf(slip.to()) : value);
        }

        @Override
        public void visitInsn(int code) {
            int kind = slip.isOperation() ? OPERATIONS.get(slip.from()).indexOf(code) : -1;
            boolean meant = kind >= 0 && made == 0;
            if (meant) {
                made++;
            }
            super.visitInsn(meant ? OPERATIONS.get(slip.to()).get(kind) : code);
        }
    }
}
