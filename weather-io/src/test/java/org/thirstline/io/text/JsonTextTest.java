package org.thirstline.io.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.math.BigInteger;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

class JsonTextTest {

    @Test
    void treesAreIndentedInTheOrderTheyWereBuilt() {
        ObjectNode tree = JsonNodeFactory.instance.objectNode();
        tree.put("b", "a \"quoted\" – text");
        tree.put("a", 1.5).putNull("none").put("yes", true);
        tree.putArray("list").add(1).addObject().put("inner", 12345678901L);
        tree.putObject("empty");

        assertThat(JsonText.of(tree)).isEqualTo("""
                {
                  "b" : "a \\"quoted\\" – text",
                  "a" : 1.5,
                  "none" : null,
                  "yes" : true,
                  "list" : [
                    1,
                    {
                      "inner" : 12345678901
                    }
                  ],
                  "empty" : { }
                }
                """);
    }

    @Test
    void everyKindOfNumberReadsBackAsItself() {
        ObjectNode tree = JsonNodeFactory.instance.objectNode();
        tree.put("int", Integer.MIN_VALUE).put("long", Long.MAX_VALUE).put("double", 0.1 + 0.2);
        tree.put("float", 0.1f).put("decimal", new BigDecimal("123456789012345678901234567890.125"));
        tree.put("big", BigInteger.ONE.shiftLeft(80)).put("small", Double.MIN_VALUE);

        ObjectNode read = (ObjectNode) new JsonMapper().readTree(JsonText.of(tree));
        assertThat(read.get("int").intValue()).isEqualTo(Integer.MIN_VALUE);
        assertThat(read.get("long").longValue()).isEqualTo(Long.MAX_VALUE);
        assertThat(read.get("double").doubleValue()).isEqualTo(0.1 + 0.2);
        assertThat((float) read.get("float").doubleValue()).isEqualTo(0.1f);
        assertThat(read.get("small").doubleValue()).isEqualTo(Double.MIN_VALUE);
        assertThat(read.get("big").bigIntegerValue()).isEqualTo(BigInteger.ONE.shiftLeft(80));
        assertThat(JsonText.of(tree)).contains("123456789012345678901234567890.125");
    }

    @Test
    void whatJsonDoesNotHaveIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> JsonText.of(JsonNodeFactory.instance
                        .objectNode()
                        .set("bytes", JsonNodeFactory.instance.binaryNode(new byte[1]))));
    }
}
